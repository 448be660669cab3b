using Heaveline.Files.Garages;
using Heaveline.Studies;
using Heaveline.Web.Serving;
using Heaveline.Web.Studying;
using Heaveline.Web.Tuning;

namespace Heaveline.Web.Pages.Drives;

/// <summary>What the page of the drive asks.</summary>
/// <param name="Folder">The drive that is chosen; null in a garage without any.</param>
/// <param name="Drive">It, as it lies in the garage; null where there is none or what was written down is refused.</param>
/// <param name="Problem">Why there is none; blank where there is.</param>
internal sealed record DriveReading(string? Folder, DriveSource? Drive, string Problem)
{
    /// <summary>The choice of the drive, by its folder's name.</summary>
    public static Choice Log { get; } = new()
    {
        Name = CurrentCar.LogKey, Kind = ChoiceKind.Log, Says = "The drive, by its folder in the garage; the last one brought in when none is named.",
    };

    /// <summary>What the study is asked.</summary>
    public AskedReading<DriveSource> Asked => new()
    {
        Asked = Drive,
        Objections = Drive is null ? [new Objection(Log.Name, Problem, false) { IsMissing = true }] : [],
        Key = Drive?.Key ?? Problem,
    };

    /// <summary>What is asked of it and the drive before the change.</summary>
    public AskedReading<DriveSource> Proof => Drive is { Before: null }
        ? new() { Asked = null, Objections = [new Objection(Log.Name, "This drive follows on none.", false)], Key = Asked.Key }
        : Asked;

    /// <summary>Reads what is chosen.</summary>
    public static DriveReading Of(PageChoices chosen, GarageView garage)
    {
        if (chosen.Typed.Of(Log) is { Length: > 0 } named)
        {
            var (drive, problem) = DriveSource.Of(garage.Garage, named);
            return new DriveReading(named, drive, problem);
        }

        var last = garage.UsualDrive;
        var (found, why) = last is null ? (null, "There is no drive in this garage yet.") : DriveSource.Of(garage.Garage, last);
        return new DriveReading(last, found, why);
    }
}
