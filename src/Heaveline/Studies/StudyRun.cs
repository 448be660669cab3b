using Heaveline.Answers;
using Heaveline.Pieces;

namespace Heaveline.Studies;

/// <summary>
/// How a study is run: what it tells on its way, what stops it, how much of the machine it may take. The numbers depend on none of it.
/// </summary>
public sealed record StudyRun
{
    /// <summary>Without a word, on one processor.</summary>
    public static StudyRun Plain { get; } = new();

    /// <summary>Told the share done (–), rising to 1, perhaps from several threads.</summary>
    public IProgress<double>? Progress { get; init; }

    /// <summary>Stops the work with an <see cref="OperationCanceledException"/>.</summary>
    public CancellationToken Cancellation { get; init; }

    /// <summary>How many groups of passes run at once, at least 1.</summary>
    public int Degree { get; init => field = Math.Max(1, value); } = 1;

    /// <summary>
    /// Who stands between the study and those who do its pieces, where its work comes in pieces: keeps their answers, or has them done elsewhere.
    /// Null for nobody.
    /// </summary>
    public Func<IPieceDoer, IPieceDoer>? Through { get; init; }

    /// <summary>How many pieces are asked for at once, at least as many as groups of passes run at once here.</summary>
    public int PiecesAtOnce { get => Math.Max(field, Degree); init; }

    /// <summary>
    /// Whether all that the answer can tell is read: what else is worked out when it is first asked for is worked out in the run, where it can be
    /// stopped.
    /// </summary>
    public bool IsWhole { get; init; }

    /// <summary>Told answers that come before the last one, each better than the one before: coarse ones for whoever waits.</summary>
    public Action<Answer>? Meanwhile { get; init; }

    /// <summary>The run of a part of the work: its whole progress is told as the share between two others.</summary>
    /// <param name="from">Share done when the part begins (–).</param>
    /// <param name="to">Share done when it ends (–).</param>
    public StudyRun Between(double from, double to) =>
        this with { Progress = Progress is null ? null : new ProgressBetween(Progress, from, to), Meanwhile = null };
}
