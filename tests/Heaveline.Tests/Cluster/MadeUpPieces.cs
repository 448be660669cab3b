using System.Security.Cryptography;
using Heaveline.Pieces;

namespace Heaveline.Tests.Cluster;

/// <summary>Pieces whose answers are told by a formula, each after a moment's work.</summary>
internal sealed class MadeUpPieces(int milliseconds) : IPieceDoer
{
    private const int Some = 30;

    private int done;

    /// <summary>How many it did.</summary>
    public int Done => Volatile.Read(ref done);

    /// <summary>Once it has done some, it waits for this: the study must not be over before anybody has come to help.</summary>
    public Task Gate { get; init; } = Task.CompletedTask;

    /// <summary>At which of its pieces it fails.</summary>
    public int FailsAt { get; init; } = int.MaxValue;

    /// <summary>From which of its pieces on it answers wrongly.</summary>
    public int WrongFrom { get; init; } = int.MaxValue;

    public byte[] Do(byte[] piece, CancellationToken cancellation)
    {
        Thread.Sleep(milliseconds);
        var number = Interlocked.Increment(ref done);
        if (number > Some)
        {
            Gate.Wait(TimeSpan.FromMinutes(10.0), cancellation);
        }

        if (number == FailsAt)
        {
            throw new IOException("The disk of this machine is full.");
        }

        return number >= WrongFrom ? Answer([.. piece, 1]) : Answer(piece);
    }

    /// <summary>Pieces of several lengths.</summary>
    public static byte[] Piece(int number) => [.. BitConverter.GetBytes(number), .. new byte[36 + (number % 5)]];

    /// <summary>What comes of a piece.</summary>
    public static byte[] Answer(byte[] piece) => SHA256.HashData(piece);
}
