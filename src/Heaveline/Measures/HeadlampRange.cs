namespace Heaveline.Measures;

/// <summary>
/// A range of the dipped beam's drop as printed somewhere. No law is built in here: rules differ by place, by year and by kind of vehicle, and each
/// entry says how it was come by. Check locally.
/// </summary>
/// <param name="Source">Where it is printed.</param>
/// <param name="FromHeight">It is for lamps at least this high, m.</param>
/// <param name="ToHeight">It is for lamps at most this high, m; infinite without a limit.</param>
/// <param name="LeastDrop">Least drop (–).</param>
/// <param name="GreatestDrop">Greatest drop (–).</param>
/// <param name="Purpose">"stay" within it under all loads, or "set" it so.</param>
/// <param name="Known">"read" in a text that quotes the source, or "from memory".</param>
public sealed record HeadlampRange(
    string Source, double FromHeight, double ToHeight, double LeastDrop, double GreatestDrop, string Purpose, string Known)
{
    /// <summary>What stands beside every use of these.</summary>
    public const string Caution = "Ranges as printed, not law: check what holds where the car is used.";

    private const string R48 = "UN Regulation 48, 6.2.6.1.2";
    private const string ApprovalText = "EU type-approval text, dipped beam";
    private const string Uk = "UK inspection manual, cut-off";
    private const string De = "German inspection practice";

    /// <summary>The ranges.</summary>
    public static IReadOnlyList<HeadlampRange> Printed { get; } =
    [
        new(R48, 0.0, 0.8, 0.005, 0.025, "stay", "from memory"),
        new(R48, 0.0, 0.8, 0.010, 0.015, "set", "from memory"),
        new(R48, 0.8, 1.0, 0.005, 0.025, "stay", "from memory; 1 to 3 % is the alternative"),
        new(R48, 0.8, 1.0, 0.010, 0.015, "set", "from memory; 1.5 to 2 % is the alternative"),
        new(R48, 1.0, double.PositiveInfinity, 0.010, 0.030, "stay", "from memory"),
        new(R48, 1.0, double.PositiveInfinity, 0.015, 0.020, "set", "from memory"),
        new(
            ApprovalText,
            0.0,
            double.PositiveInfinity,
            0.005,
            0.025,
            "stay",
            "read in a bilingual extract; one person at the wheel, unladen, when set"),
        new(ApprovalText, 0.0, double.PositiveInfinity, 0.010, 0.015, "set", "read in a bilingual extract"),
        new(ApprovalText + ", another vehicle category", 0.0, double.PositiveInfinity, 0.0075, 0.0275, "stay", "read in a bilingual extract"),
        new(ApprovalText + ", another vehicle category", 0.0, double.PositiveInfinity, 0.010, 0.0175, "set", "read in a bilingual extract"),
        new(Uk, 0.0, 0.85, 0.005, 0.020, "stay", "read in a beam tester's manual that quotes it"),
        new(Uk, 0.85, double.PositiveInfinity, 0.0125, 0.0275, "stay", "read in a beam tester's manual that quotes it"),
        new(De, 0.0, double.PositiveInfinity, 0.007, 0.017, "stay", "read on an owners' page: 12 cm ± 5 cm at 10 m"),
        new(De + ", self-levelling", 0.0, double.PositiveInfinity, 0.005, 0.015, "stay", "read on an owners' page: 10 cm ± 5 cm at 10 m"),
    ];

    /// <summary>Those for a lamp of a height, m.</summary>
    public static IReadOnlyList<HeadlampRange> For(double height) => [.. Printed.Where(r => height >= r.FromHeight && height <= r.ToHeight)];

    /// <summary>Whether a drop lies inside.</summary>
    public bool Holds(double drop) => drop >= LeastDrop && drop <= GreatestDrop;
}
