using Heaveline.Drives.Events;

namespace Heaveline.Studies;

/// <summary>Two drives that a command was given, each with what was written down about it.</summary>
/// <param name="Before">The drive that was given as the one before.</param>
/// <param name="After">The drive that was given as the one after.</param>
/// <param name="IsLoadGiven">Whether an option says how both were loaded, so that what is written down of it does not count.</param>
internal sealed record DescribedPair(RecordedDrive Before, RecordedDrive After, bool IsLoadGiven)
{
    /// <summary>The two; null where either is a log alone.</summary>
    /// <param name="reader">What was given.</param>
    /// <param name="before">The drive before.</param>
    /// <param name="after">The drive after.</param>
    public static DescribedPair? Of(AskedReader reader, DescribedDrive? before, DescribedDrive? after) => before is null || after is null
        ? null
        : new DescribedPair(before.Drive, after.Drive, reader.Given.Of(Choices.Load) is not null);

    /// <summary>Objects to drives that are turned round, and to a forecast between unlike loads.</summary>
    /// <param name="reader">What was given, to which objections go.</param>
    /// <param name="after">The choice of the drive after.</param>
    /// <param name="forecast">The choice that asks for a forecast; null where none is asked for.</param>
    public void Refuse(AskedReader reader, Choice after, Choice? forecast)
    {
        if (Before.Before?.Path == After.Path)
        {
            reader.Object(
                after.Name,
                $"before and after are turned round: {Before.Name} is written down as driven after {After.Name}; give {After.Name} as --before.",
                isUsage: false);
        }

        if (forecast is not null && !IsLoadGiven && DriveCautions.IsLoadedOtherwise(Before, After))
        {
            reader.Object(
                forecast.Name,
                $"{forecast.Name}: not to be judged; {DriveCautions.Loads(Before, After)}, and what the load did is not told from what the "
                + "change did. Leave it out.",
                isUsage: false);
        }
    }

    /// <summary>What was written down about one of them, as far as no option stands instead.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="settings">What is known of it, options before what was written down.</param>
    public RecordedDrive Holding(RecordedDrive drive, EventSettings settings) =>
        drive with { Car = IsLoadGiven ? null : drive.Car, Settings = settings };
}
