using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Drives.Identification;
using Heaveline.Drives.Planning;
using Heaveline.Figures;

namespace Heaveline.Studies;

/// <summary>A test day: the drive that would tell, with its protocol.</summary>
public sealed record PlanAnswer : Answer
{
    /// <summary>Figure of the protocol to take along.</summary>
    public const string Card = "card";

    /// <summary>Figure of what more passes tell.</summary>
    public const string Passes = "passes";

    /// <summary>What was asked.</summary>
    public required PlanAsked Asked { get; init; }

    /// <summary>What the day was planned for.</summary>
    public required TestDayWish Wish { get; init; }

    /// <summary>The day.</summary>
    public required TestDay Day { get; init; }

    /// <summary>What the car file leaves open of the number.</summary>
    public required FileDoubt FromFile { get; init; }

    /// <summary>Half-width of the 90 % interval that the car file's doubts leave of the number, of its logarithm.</summary>
    public double Doubt => FromFile.HalfWidth;

    /// <summary>What the first drive told; null where there is none, or where its log bears no car.</summary>
    public CarFromDrive? First { get; init; }

    /// <summary>Half-widths of the number over the best hump under other loads.</summary>
    public required ImmutableArray<(string Load, double HalfWidth)> Loads { get; init; }

    /// <summary>The drive that tells with the fewest passes; null where none is safe.</summary>
    public TestDrive? Best => Day.Drives is [var best, ..] ? best : null;

    /// <summary>Passes in each state that the card asks for, a multiple of three; 0 without a card, since none would do what is wanted.</summary>
    public int CardPasses => (Asked.Change is null ? Best?.PassesForNumber : Best?.PassesForChange) ?? 0;

    /// <summary>
    /// Half-width of the 90 % interval of the number's logarithm after the card's passes; without a card after those that would halve its doubt, or
    /// after the most.
    /// </summary>
    public double Reached
    {
        get
        {
            var passes = CardPasses > 0 ? CardPasses : Best!.PassesForNumber ?? TestDrive.MostPasses;
            return TestDay.HalfWidths(Wish, Best!.Hump, Best.Speeds, passes, Wish.Phone, CancellationToken.None)[Asked.Number];
        }
    }

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Head => Words.Head;

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> Tables => Best is null ? [] : [PlanTable.Of(Day)];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Cautions => Words.Cautions;

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Sentences => [.. Words.Places, .. Words.Protocol];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Closing =>
        [.. Best is { } best && TestHump.OfBoards.Contains(best.Hump) ? PlankWords.Safety : [], .. Words.Safety];

    /// <inheritdoc/>
    public override IReadOnlyList<Source> Sources => [Answers.Sources.Axes, Answers.Sources.Parts, Answers.Sources.Steps, Answers.Sources.Draws];

    /// <inheritdoc/>
    public override IReadOnlyList<string> FigureIds => [Card, Passes];

    /// <inheritdoc/>
    public override JsonObject Facts => new()
    {
        ["car"] = Asked.Car.Name,
        ["load"] = Asked.Car.Load.Name,
        ["change"] = Asked.Change?.Name,
        ["tells"] = PlanWords.Name(Asked.Number),
        ["doubt"] = Doubt,
        ["hump"] = Best?.Hump.Name,
        ["speeds"] = Best is { } best ? new JsonArray([.. best.Speeds.Select(v => (JsonNode)JsonValue.Create(v)!)]) : null,
        ["passes"] = CardPasses == 0 ? null : CardPasses,
        ["sentences"] = TablesJson.Texts([.. Head.Select(s => s.Text), .. Sentences.Select(s => s.Text)]),
        ["cautions"] = TablesJson.Texts([.. Cautions, .. Closing]),
    };

    /// <inheritdoc/>
    public override Figure Figure(string id) => (id, Best) switch
    {
        (Card, { } best) when CardPasses > 0 => PlanCardFigure.Of(
            $"Test day: {Asked.Car.Name}, {Asked.Car.Load.Name}",
            [.. Words.Protocol.Select(s => s.Text)],
            best,
            CardPasses,
            Asked.Change is null ? ["as it is"] : ["before", "after"],
            string.Join(" ", Closing)),
        (Passes, { } best) => PlanPassesFigure.Of(Wish, best, PlanWords.Name(Asked.Number), Doubt),
        (Card, _) or (Passes, null) => SentenceFigure.Of("No test day", [.. Head.Select(s => s.Text)]),
        _ => base.Figure(id),
    };

    private PlanWords Words => new(this);
}
