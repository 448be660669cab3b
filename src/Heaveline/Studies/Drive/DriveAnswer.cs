using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Drives.Recovery;
using Heaveline.Figures;

namespace Heaveline.Studies;

/// <summary>What the log of a drive is good for, its bumps and its comfort.</summary>
public sealed record DriveAnswer : Answer
{
    /// <summary>Figure of the whole drive: speed, knock, swing, its bumps, and what is not read.</summary>
    public const string Strip = "strip";

    /// <summary>Figure of the bumps of each site over time, one over the other.</summary>
    public const string Overlay = "events";

    /// <summary>The same over distance.</summary>
    public const string Distance = "distance";

    /// <summary>Figure of the spectra: of bumps and of the road between.</summary>
    public const string Spectra = "spectra";

    /// <summary>Figure of the car: its numbers with their intervals.</summary>
    public const string CarCard = "car";

    /// <summary>Figure of the spectra with those of the fitted car, and of what is left.</summary>
    public const string Fit = "fit";

    /// <summary>Figure of the road of a site.</summary>
    public const string SiteRoad = "road";

    /// <summary>Figure of the roughness along the drive.</summary>
    public const string Rough = "roughness";

    /// <summary>What was asked.</summary>
    public required DriveAsked Asked { get; init; }

    /// <summary>The drive on the car's axes.</summary>
    public required Drive Drive { get; init; }

    /// <summary>What it is good for.</summary>
    public required Trust Trust { get; init; }

    /// <summary>Its bumps; null where it does not bear looking for them.</summary>
    public DriveEvents? Events { get; init; }

    /// <summary>Passes over them that may have been missed.</summary>
    internal ImmutableArray<MissedPass> Missed { get; init => field = value.IsDefault ? [] : value; } = [];

    /// <summary>The car that it tells; null where the log does not bear it.</summary>
    public CarFromDrive? Identified { get; init; }

    /// <summary>The car file's numbers beside it; null where none was named.</summary>
    public CarBeside? Beside { get; init; }

    /// <summary>The road of the site that was asked for; null where none was.</summary>
    public RecoveredRoad? Road { get; init; }

    /// <summary>The car file scaled to the drive; null where it was not asked for.</summary>
    public Twin? Twin { get; init; }

    /// <summary>What else its car tells; null where the car is not told.</summary>
    public DriveDetail? Detail { get; init; }

    /// <summary>Its comfort at the floor; null where it does not bear weighing it.</summary>
    public DriveComfort? Comfort { get; init; }

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Head =>
    [
        .. Trust.Verdicts.Select(v => new Sentence($"for-{Word(v.Use)}", Said(v))),
        .. Described.Length > 0 ? new[] { new Sentence("described", Described) } : [],
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> Tables =>
    [
        .. Identified is null ? [] : DriveCarTable.Of(Identified, Beside),
        .. Events is null ? [] : EventTable.Of(Events),
        .. Comfort is null ? [] : new[] { FloorTable.Of(Comfort) },
        DriveTable.Of(Drive, Trust),
    ];

    /// <inheritdoc/>
    public override IEnumerable<string> LinesIn(Quantities.ReaderUnits units) => DriveLines.Short(this, units);

    /// <inheritdoc/>
    public override IEnumerable<string> WholeLinesIn(Quantities.ReaderUnits units) => DriveLines.Whole(this, units);

    /// <inheritdoc/>
    public override IReadOnlyList<string> Cautions =>
    [
        .. Doubtful,
        .. DriveWords.Cautions(Drive, Trust, Asked.Advice),
        .. InstantWords.Wheelbase(Asked.Settings, Asked.Car) is { } own ? [own] : Array.Empty<string>(),
        .. PhoneWords.Unusual(Asked.Settings.Phone),
        .. Events is { Events.IsEmpty: false } ? PhoneWords.Missing(Asked.Settings, Asked.Advice) : [],
        .. Events is null ? [] : EventWords.Cautions(Events, Asked.Advice, Drive.Log.Of(SensorKind.Speed) is not null),
        .. MissedWords.Of(Missed),
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Sentences =>
    [
        .. CarSentences,
        .. Recovered,
        .. Events is null ? [] : EventWords.Of(Events, Asked.Advice),
        .. Reading,
    ];

    /// <summary>What is said of the car beside its verdict.</summary>
    internal IEnumerable<Sentence> CarSentences => Identified is null ? [] : DriveCarWords.Of(this);

    /// <summary>How the files were read, where that is not doubtful.</summary>
    internal IEnumerable<Sentence> Reading => Story.Where(s => !s.IsDoubtful).Select(s => new Sentence(s.About, s.Text));

    /// <summary>What is said of the road and of the twin that were asked for.</summary>
    internal IEnumerable<Sentence> Recovered =>
    [
        .. (Asked.Road is not null || Asked.WantsTwin) && DriveRecovery.NotTold(Events, Identified) is { } why
            ? new[] { new Sentence("not-recovered", why) } : [],
        .. Asked.WantsRoughness ? RoughnessSaid : [],
        .. DriveTwinWords.Of(Twin, Beside),
        .. DriveRoadWords.Of(Road),
    ];

    /// <summary>What is said of the roughness along the road.</summary>
    internal IEnumerable<Sentence> RoughnessSaid => Detail is null
        ? [new Sentence("roughness", "The roughness along the road is not told: the car of the drive tells it, and no car is told.")]
        : Detail.Of(DriveDetailKind.Roughness).Sentences;

    /// <inheritdoc/>
    public override IReadOnlyList<string> Closing => [DriveWords.Safety];

    /// <inheritdoc/>
    public override IReadOnlyList<Source> Sources =>
    [
        Answers.Sources.Axes,
        .. Events is { Events.IsEmpty: false } ? [Answers.Sources.Parts] : Array.Empty<Source>(),
        .. Comfort is null ? Array.Empty<Source>() : [Answers.Sources.Comfort, Answers.Sources.Weightings],
        .. HasCar ? [Answers.Sources.Identification] : Array.Empty<Source>(),
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<string> FigureIds =>
        [
            Strip,
            .. Events is { Events.IsEmpty: false } ? [Overlay, Distance, Spectra] : Array.Empty<string>(),
            .. HasCar ? [CarCard, Fit] : Array.Empty<string>(),
            .. Road is not null ? [SiteRoad] : Array.Empty<string>(),
            .. Detail is not null ? [Rough] : Array.Empty<string>(),
        ];

    /// <inheritdoc/>
    public override byte[] Csv() => EventsCsv.Of(Events);

    /// <inheritdoc/>
    public override IReadOnlyList<(string Ending, byte[] Bytes)> Written(string option, string name) => option switch
    {
        "write" when Road is not null => DriveRoadWords.Files(Road, name),
        "write-twin" when Twin is { IsBelieved: true } && Beside is not null => [(".yaml", DriveTwinWords.Variant(Twin, Beside.Car, Asked.CarFile))],
        "write-roughness" when Detail is not null => [(".csv", RoughnessTable.Csv(Detail.Roughness))],
        "write" or "write-twin" or "write-roughness" => throw new Quantities.RefusedValueException(
            "what is to be written", "not told by this drive", "told", Twin?.Refusal ?? DriveRecovery.NotTold(Events, Identified) ?? ""),
        _ => base.Written(option, name),
    };

    /// <inheritdoc/>
    public override JsonObject Facts => new()
    {
        ["verdict"] = new JsonObject([.. Trust.Verdicts.Select(v => KeyValuePair.Create(Word(v.Use), (JsonNode?)new JsonObject
        {
            ["level"] = LevelWord(v.Level),
            ["reason"] = v.Reason,
        }))]),
        ["story"] = new JsonArray([.. OfSheet.Concat(Story).Select(s => (JsonNode)new JsonObject
        {
            ["about"] = s.About, ["text"] = s.Text, ["doubtful"] = s.IsDoubtful, ["instead"] = TablesJson.Texts(Overruling.Instead(s.About)),
        })]),
        ["axes"] = new JsonObject { ["up"] = Axis(Drive.Mount.Up), ["forward"] = Drive.Mount.Forward is { } forward ? Axis(forward) : null },
        ["gaps"] = new JsonArray([.. Drive.Clock.Gaps.Select(g => (JsonNode)new JsonObject { ["from"] = g.From, ["to"] = g.To })]),
        ["moves"] = new JsonArray([.. Drive.Mount.Moves.Select(t => (JsonNode)JsonValue.Create(t)!)]),
        ["dropped"] = new JsonArray([.. Trust.Dropped.Select(d => (JsonNode)new JsonObject
        {
            ["from"] = d.Part.From, ["to"] = d.Part.To, ["reason"] = d.Reason,
        })]),
        ["events"] = EventsJson.Of(Events),
        ["car"] = DriveCarJson.Of(this),
        ["road"] = DriveRecovery.Json(Road),
        ["twin"] = DriveRecovery.Json(Twin),
        ["halves"] = DriveDetailJson.Of(Detail?.Halves),
        ["speeds"] = DriveDetailJson.Of(Detail?.Speeds),
        ["roughness"] = DriveDetailJson.Of(Detail?.Roughness),
        ["cautions"] = TablesJson.Texts([.. Cautions, .. Closing]),
    };

    /// <inheritdoc/>
    public override Figure Figure(string id) => id switch
    {
        Strip => DriveStripFigure.Of(Drive, Trust, Events),
        Overlay or Distance or Spectra when Events is not { Events.IsEmpty: false } => throw new Quantities.RefusedValueException(
            "bumps of the drive", "0", "1 or more", "There is nothing to lay over each other; draw the strip."),
        Overlay when Events is not null => EventsFigure.OverTime(Drive, Events),
        Distance when Events is not null => EventsFigure.OverDistance(Drive, Events),
        Spectra when Events is not null => EventSpectraFigure.Of(Drive, Events),
        CarCard or Fit when !HasCar => throw new Quantities.RefusedValueException(
            "cars told by the drive",
            "0",
            "1",
            "No car was fitted to this drive; give --wheelbase, and look at what the answer says of the car itself."),
        CarCard when Identified is not null => DriveCarFigure.Of(
            Identified, DriveCarTable.Of, n => Beside?.Of(n), DriveCarWords.Motion(Identified)),
        SiteRoad => Road is not null ? RecoveredRoadFigure.Of(Road) : throw new Quantities.RefusedValueException(
            "roads told by the drive", "0", "1", "Give --road and a site; look at what the answer says of it."),
        Rough => Detail?.Of(DriveDetailKind.Roughness).Figure ?? throw new Quantities.RefusedValueException(
                "stretches of road whose roughness is told", "0", "1 or more",
                "Look at what the answer says of the car and of the road along the drive."),
        Fit when Identified is not null => DriveFitFigure.Of(Identified),
        _ => base.Figure(id),
    };

    /// <summary>Whether a car was sought and is not told by the drive; one that wants its wheelbase first is not refused yet.</summary>
    public bool IsCarRefused => Identified is { IsBelieved: false, Refusals: [{ Kind: not RefusalKind.Wheelbase }, ..] };

    private bool HasCar => Identified is { Estimates.IsEmpty: false };

    private IEnumerable<StoryLine> Story => Drive.Log.Story.Concat(Drive.Story);

    // In the facts alone: lines have it in the head.
    private IEnumerable<StoryLine> OfSheet => Described.Length > 0 ? [new StoryLine("drive-file", Described)] : [];

    private string Described => Asked.Described(Events);

    private IEnumerable<string> Doubtful => Story.Where(s => s.IsDoubtful).Select(s => s.Text);

    private static JsonArray Axis(Direction axis) => new(axis.X, axis.Y, axis.Z);

    private string Said(TrustVerdict verdict)
    {
        if (verdict.Use == TrustUse.Car)
        {
            return $"The car itself: {DriveCarWords.Verdict(verdict, Identified)}";
        }

        var use = verdict.Use == TrustUse.Events ? "Single bumps" : "Comfort";
        var level = verdict.Level switch { TrustLevel.Good => "good", TrustLevel.Limited => "with limits", _ => "no" };
        // What was found stands with what the log bears.
        var found = verdict.Use switch
        {
            TrustUse.Events when Events is not null => " " + EventWords.Found(Events),
            TrustUse.Comfort when Comfort is { Axes: [var vertical, ..] } => string.Create(
                CultureInfo.InvariantCulture,
                $" Vertical, weighted by {vertical.Weighting.Name}, the floor shakes by {vertical.Rms:F2} m/s² (RMS), no seat between.")
                + FloorTable.Shocks(vertical),
            _ => "",
        };
        return $"{use}: {level}. {verdict.Reason}{found}";
    }

    private static string Word(TrustUse use) => use switch { TrustUse.Events => "events", TrustUse.Comfort => "comfort", _ => "car" };

    private static string LevelWord(TrustLevel level) => level switch { TrustLevel.Good => "good", TrustLevel.Limited => "limited", _ => "none" };
}
