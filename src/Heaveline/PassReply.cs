using Heaveline.Passes;
using Heaveline.Studies;

namespace Heaveline;

/// <summary>What happened in a pass: its numbers and sentences, and the motion itself, sample by sample, in SI units.</summary>
/// <remarks>
/// Angles count from the trim, nose-down and right-side-down positive; heights up positive; t = 0 when the front wheel centres stand at the road's
/// x = 0. All series have one value per sample.
/// </remarks>
public sealed class PassReply : Reply
{
    private readonly Pass pass;

    internal PassReply(string question, PassAnswer answer)
        : base(question, answer)
    {
        pass = answer.Pass;
        IsWhole = answer.IsWhole;
    }

    /// <summary>Whether it ran to its end; if not, <see cref="Reply.Failure"/> says why, and there are no numbers, only the motion so far.</summary>
    public bool IsWhole { get; }

    /// <summary>When the rear wheel centres leave the obstacle, s: the hit is before, the settling after.</summary>
    public double RearLeaves => pass.RearLeaves;

    /// <summary>Time of each sample, s.</summary>
    public IReadOnlyList<double> Time => pass.Time;

    /// <summary>Heave of the loaded centre of gravity, m.</summary>
    public IReadOnlyList<double> Heave => pass.Heave;

    /// <summary>Pitch, rad.</summary>
    public IReadOnlyList<double> Pitch => pass.Pitch;

    /// <summary>Roll, rad; 0 of a two-wheeler.</summary>
    public IReadOnlyList<double> Roll => pass.Roll;

    /// <summary>Heave acceleration of the loaded centre of gravity, m/s².</summary>
    public IReadOnlyList<double> HeaveAcceleration => pass.HeaveAcceleration;

    /// <summary>Pitch acceleration, rad/s².</summary>
    public IReadOnlyList<double> PitchAcceleration => pass.PitchAcceleration;

    /// <summary>Travel of a wheel from the reference state, m, bump positive.</summary>
    /// <param name="wheel">0 front left, 1 front right, 2 rear left, 3 rear right.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such wheel.</exception>
    public IReadOnlyList<double> Travel(int wheel) => pass.Travel(Checked(wheel));

    /// <summary>Load of a tyre on the road, N; of the whole wheel of a two-wheeler.</summary>
    /// <param name="wheel">0 front left, 1 front right, 2 rear left, 3 rear right.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such wheel.</exception>
    public IReadOnlyList<double> TyreLoad(int wheel) => pass.TyreLoad(Checked(wheel));

    private static int Checked(int wheel) =>
        wheel is >= 0 and <= 3 ? wheel : throw new ArgumentOutOfRangeException(nameof(wheel), wheel, "0 front left to 3 rear right.");
}
