using System.Globalization;
using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Drives;
using Heaveline.Figures;

namespace Heaveline.Studies;

/// <summary>What the log of a drive is good for.</summary>
public sealed record DriveAnswer : Answer
{
    /// <summary>Figure of the whole drive: speed, knock, swing, and what is not read.</summary>
    public const string Strip = "strip";

    /// <summary>What was asked.</summary>
    public required DriveAsked Asked { get; init; }

    /// <summary>The drive on the car's axes.</summary>
    public required Drive Drive { get; init; }

    /// <summary>What it is good for.</summary>
    public required Trust Trust { get; init; }

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Head => [.. Trust.Verdicts.Select(v => new Sentence($"for-{Word(v.Use)}", Said(v)))];

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> Tables => [DriveTable.Of(Drive, Trust)];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Cautions => [.. Doubtful, .. DriveWords.Cautions(Drive, Trust)];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Sentences => [.. Story.Where(s => !s.IsDoubtful).Select(s => new Sentence(s.About, s.Text))];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Closing => [DriveWords.Safety];

    /// <inheritdoc/>
    public override IReadOnlyList<Source> Sources => [Answers.Sources.Axes];

    /// <inheritdoc/>
    public override IReadOnlyList<string> FigureIds => [Strip];

    /// <inheritdoc/>
    public override JsonObject Facts => new()
    {
        ["verdict"] = new JsonObject([.. Trust.Verdicts.Select(v => KeyValuePair.Create(Word(v.Use), (JsonNode?)new JsonObject
        {
            ["level"] = LevelWord(v.Level),
            ["reason"] = v.Reason,
        }))]),
        ["story"] = new JsonArray([.. Story.Select(s => (JsonNode)new JsonObject
        {
            ["about"] = s.About, ["text"] = s.Text, ["doubtful"] = s.IsDoubtful,
        })]),
        ["axes"] = new JsonObject { ["up"] = Axis(Drive.Mount.Up), ["forward"] = Drive.Mount.Forward is { } forward ? Axis(forward) : null },
        ["moves"] = new JsonArray([.. Drive.Mount.Moves.Select(t => (JsonNode)JsonValue.Create(t)!)]),
        ["dropped"] = new JsonArray([.. Trust.Dropped.Select(d => (JsonNode)new JsonObject
        {
            ["from"] = d.Part.From, ["to"] = d.Part.To, ["reason"] = d.Reason,
        })]),
        ["cautions"] = TablesJson.Texts([.. Cautions, .. Closing]),
    };

    /// <inheritdoc/>
    public override Figure Figure(string id) => id == Strip ? DriveStripFigure.Of(Drive, Trust) : base.Figure(id);

    private IEnumerable<StoryLine> Story => Drive.Log.Story.Concat(Drive.Story);

    private IEnumerable<string> Doubtful => Story.Where(s => s.IsDoubtful).Select(s => s.Text);

    private static JsonArray Axis(Direction axis) => [axis.X, axis.Y, axis.Z];

    private static string Said(TrustVerdict verdict)
    {
        var use = verdict.Use switch { TrustUse.Events => "Single bumps", TrustUse.Comfort => "Comfort", _ => "The car itself" };
        var level = verdict.Level switch { TrustLevel.Good => "good", TrustLevel.Limited => "with limits", _ => "no" };
        // What the log would bear is not yet what this program does with it.
        var yet = verdict.Level == TrustLevel.None ? "" : verdict.Use switch
        {
            TrustUse.Events => " This program does not pick bumps out of a log.",
            TrustUse.Comfort => " This program does not weigh a log's vibration.",
            _ => " Whether it holds enough bumps is not looked at, and this program does not work a car's frequencies and damping out of it.",
        };
        return string.Create(CultureInfo.InvariantCulture, $"{use}: {level}. {verdict.Reason}{yet}");
    }

    private static string Word(TrustUse use) => use switch { TrustUse.Events => "events", TrustUse.Comfort => "comfort", _ => "car" };

    private static string LevelWord(TrustLevel level) => level switch { TrustLevel.Good => "good", TrustLevel.Limited => "limited", _ => "none" };
}
