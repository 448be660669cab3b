namespace Heaveline.Studies;

/// <summary>Where a reader says what a log does not say: the same lack is made good by an option or on the page.</summary>
/// <param name="Wheelbase">How the wheelbase is given, a sentence.</param>
/// <param name="Phone">How the phone's place is given, a sentence.</param>
/// <param name="Reasons">Where the reasons stand why bumps do not count.</param>
/// <param name="Gaps">Where all gaps of the log stand.</param>
/// <param name="Sites">How bumps are named that two drives have in common, a sentence.</param>
/// <param name="Same">How it is said what was the same in both drives, the end of a sentence without its stop.</param>
/// <param name="Planned">Who sends nobody over a hump faster, the words before "nobody".</param>
internal sealed record DriveAdvice(string Wheelbase, string Phone, string Reasons, string Gaps, string Sites, string Same, string Planned)
{
    /// <summary>To whoever typed a command.</summary>
    public static DriveAdvice Command { get; } = new(
        "Give --wheelbase, a tape will do.",
        "Give --phone.",
        "under --json and --csv",
        "in --json",
        "Name them by --site where that is wrong.",
        "say by --same what was the same",
        "'plan' and 'ties' send");

    /// <summary>To whoever reads a report, of which another may have made the drives.</summary>
    public static DriveAdvice Report { get; } = new(
        "It is to be written down with the drive, or given by the car; a tape will do.",
        "It is to be written down with the drive.",
        "in the table of its bumps as CSV",
        "in the JSON of the drive",
        "Where that is wrong, they are to be given the same names in both drives.",
        "what was the same is to be written down with the drive after",
        "a planned test day sends");

    /// <summary>To whoever reads the page of the drive.</summary>
    public static DriveAdvice Page { get; } = new(
        "Write it down below, under \"Wheelbase\" or by naming the car; a tape will do.",
        "Write it down below.",
        "at its drawing, and in the numbers that can be downloaded",
        "in the JSON of the drive at a glance",
        "Where that is wrong, give them the same name under \"The bumps\", here and on the page of the drive before.",
        "tick below what was the same",
        "a planned test day sends");
}
