using Heaveline.Cli.Output;
using Heaveline.Files.Keeping;

namespace Heaveline.Cli.Commands;

/// <summary>Studies that several machines do, left to the program beside this one that can: this one turns into it.</summary>
internal static class Helping
{
    /// <summary>Turns into that program, with the same words.</summary>
    public static void Leave(Streams streams) => Serving.Become(streams);

    /// <summary>Never asked for: see <see cref="Leave"/>.</summary>
    public static IPieceRun Open(
        Streams streams, PieceWays.Given ways, StudyTexts study, Action<IReadOnlyList<byte[]>> withdraw, CancellationToken stop) =>
        throw new InvalidOperationException("The program beside this one opens studies to others.");

    /// <summary>Comes back only when the other program cannot be started.</summary>
    public static Task<int> StandBy(Streams streams, StandByOptions asked, CancellationToken stop)
    {
        Serving.Become(streams);
        return Task.FromResult(ExitCode.NotComputed);
    }

    /// <summary>Comes back only when the other program cannot be started.</summary>
    public static Task<int> Out(Streams streams, HelpOutAsked asked, CancellationToken stop)
    {
        Serving.Become(streams);
        return Task.FromResult(ExitCode.NotComputed);
    }
}
