using Heaveline.Pieces;

namespace Heaveline.Cluster;

/// <summary>Makes of a study's texts who does its pieces; let go when the help has ended.</summary>
public interface IStudyReader : IDisposable
{
    /// <summary>Reads a study.</summary>
    /// <param name="texts">The question and the texts of its files.</param>
    /// <param name="hash">What it is known by.</param>
    IPieceDoer Read(byte[] texts, string hash);
}
