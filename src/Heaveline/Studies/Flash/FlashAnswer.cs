using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Films;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>The rhythm of a headlamp.</summary>
public sealed record FlashAnswer : Answer
{
    /// <summary>The figure.</summary>
    public const string Drawing = "flash";

    /// <summary>What was asked.</summary>
    public required FlashAsked Asked { get; init; }

    /// <summary>What was found.</summary>
    public required LampFlash Flash { get; init; }

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Head =>
        [new("flash", $"{Asked.Name}: the lamp from {Numeral.Of(Flash.From, 2)} s on, for {Numeral.Of(Flash.Length, 2)} s.")];

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> Tables => [FlashTable.Of(Flash)];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Sentences =>
    [
        new("flash-rhythm", $"The lamp flashes {Hertz(Flash.Rhythm)}, {Numeral.Of(Flash.Count, 1)} times seen; one flash later "
            + $"{Percent(Flash.LeftAfterOne.Value)} ({Percent(Flash.LeftAfterOne.Low)} to {Percent(Flash.LeftAfterOne.High)}) of it is left."),
        new("flash-pitch", Pitch),
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Cautions =>
    [
        $"A dying swing explains {Percent(Flash.Explained)} of the brightness's changes. Nothing else of the car is told by its lamp, and no "
            + "film of a real car has tested it yet.",
        .. Flash.Lost == 0 ? Array.Empty<string>()
            : [$"In {Flash.Lost} of {Flash.Lost + Flash.Times.Length} frames the lamp was not seen: they are left out."],
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<string> FigureIds => [Drawing];

    /// <inheritdoc/>
    public override JsonObject Facts => new()
    {
        ["verdict"] = Flash.Pitch.Length == 1 ? "said" : Flash.Pitch.IsEmpty ? "cannot-say" : "two-answers",
        ["pitch-hz"] = new JsonArray([.. Flash.Pitch.Select(p => (JsonNode)new JsonObject { ["value"] = p.Value, ["low"] = p.Low,
            ["high"] = p.High })]),
        ["sentences"] = TablesJson.Texts([.. Sentences.Select(s => s.Text), .. Cautions]),
    };

    /// <inheritdoc/>
    public override Figure Figure(string id) => id == Drawing
        ? new Figure
        {
            Title = "A headlamp after the bump",
            AltText = "Logarithm of the lamp's brightness less its slow part against time, with the dying swing that fits it.",
            Caption = $"{Head[0].Text} {Sentences[0].Text} {Sentences[1].Text}",
            SharedX = new Axis { Label = "time in the film", Unit = "s" },
            Panels =
            [
                new ChartPanel
                {
                    Id = "brightness",
                    Y = new Axis { Label = "ln brightness, slow part off" },
                    Traces =
                    [
                        Trace.From("seen", Flash.Times.AsSpan(), Flash.Seen.AsSpan(), Pen.Of(Ink.First)),
                        Trace.From("dying swing", Flash.Times.AsSpan(), Flash.Fitted.AsSpan(), Pen.Of(Ink.Second, Dash.Dashed)),
                    ],
                },
            ],
        }
        : base.Figure(id);

    /// <inheritdoc/>
    protected override bool TellsFirst => true;

    private string Pitch => Flash.Pitch switch
    {
        [] => "Neither that nor half of it is the pitch of a road car: is the film slow motion, or was it not the bump?",
        [var one] when one.Value == Flash.Rhythm.Value => $"The car pitches {Hertz(one)}: half of that would be too slow for a road car.",
        [var one] => $"The car pitches {Hertz(one)}: the beam's edge sweeps the camera twice in each swing, the flash itself is too quick for a "
            + "road car.",
        [var one, var half, ..] => $"The car pitches {Hertz(one)}, or {Hertz(half)} where the beam's edge sweeps the camera twice in each swing: "
            + "the lamp does not tell which.",
    };

    private static string Hertz(FilmNumber f) => $"at {Numeral.Of(f.Value, 2)} Hz ({Numeral.Of(f.Low, 2)} to {Numeral.Of(f.High, 2)} Hz)";

    private static string Percent(double share) => $"{Numeral.Of(In.Percent.Of(share), 0)} %";
}
