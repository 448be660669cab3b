namespace Heaveline.Measures.Comfort;

/// <summary>
/// The table of frequency weightings. Parameters: ISO 8041-1, "Parameters and transfer functions of the frequency weightings", read as reprinted in
/// the reference manual of a vibration meter (its Table 3.1; two copies agree), not in the standard. ISO 2631-1:1997 prints Q₁ = 0.71 for 1/√2.
/// The uses are those of ISO 2631-1:1997, tables 1 and 2, after a public transcription.
/// </summary>
public static class Weightings
{
    /// <summary>Wk: vertical at the seat, all axes at the feet, vertical for a recumbent person.</summary>
    public static Weighting Wk { get; } = new()
    {
        Name = "Wk", Use = "z at the seat; x, y, z at the feet; z recumbent", F1 = 0.4, F2 = 100.0, F3 = 12.5, F4 = 12.5,
        Q4 = 0.63, F5 = 2.37, Q5 = 0.91, F6 = 3.35, Q6 = 0.91,
    };

    /// <summary>Wd: horizontal at the seat; lateral and vertical at the backrest.</summary>
    public static Weighting Wd { get; } = new()
    {
        Name = "Wd", Use = "x, y at the seat; y, z at the backrest", F1 = 0.4, F2 = 100.0, F3 = 2.0, F4 = 2.0, Q4 = 0.63,
    };

    /// <summary>Wf: vertical, motion sickness.</summary>
    public static Weighting Wf { get; } = new()
    {
        Name = "Wf", Use = "z, motion sickness", F1 = 0.08, F2 = 0.63, F4 = 0.25, Q4 = 0.86, F5 = 0.0625, Q5 = 0.80, F6 = 0.10, Q6 = 0.80,
        CheckedFrom = 0.02, CheckedTo = 4.0, MustReach = Math.Pow(10.0, -0.4),
    };

    /// <summary>Wc: fore-aft at the backrest.</summary>
    public static Weighting Wc { get; } = new()
    {
        Name = "Wc", Use = "x at the backrest", F1 = 0.4, F2 = 100.0, F3 = 8.0, F4 = 8.0, Q4 = 0.63,
    };

    /// <summary>We: rotations at the seat.</summary>
    public static Weighting We { get; } = new()
    {
        Name = "We", Use = "rotations at the seat", F1 = 0.4, F2 = 100.0, F3 = 1.0, F4 = 1.0, Q4 = 0.63,
    };

    /// <summary>Wj: the head of a recumbent person, along x.</summary>
    public static Weighting Wj { get; } = new()
    {
        Name = "Wj", Use = "x recumbent, at the head", F1 = 0.4, F2 = 100.0, F5 = 3.75, Q5 = 0.91, F6 = 5.32, Q6 = 0.91,
    };

    /// <summary>Wb: vertical in rail vehicles, ISO 2631-4.</summary>
    public static Weighting Wb { get; } = new()
    {
        Name = "Wb", Use = "z in rail vehicles", F1 = 0.4, F2 = 100.0, F3 = 16.0, F4 = 16.0, Q4 = 0.55, F5 = 2.5, Q5 = 0.90, F6 = 4.0, Q6 = 0.95,
        K = 1.024,
    };

    /// <summary>All of them, in the order Wk, Wd, Wf, Wc, We, Wj, Wb.</summary>
    public static IReadOnlyList<Weighting> All { get; } = [Wk, Wd, Wf, Wc, We, Wj, Wb];
}
