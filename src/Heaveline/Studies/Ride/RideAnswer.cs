using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Doubts;
using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Quantities;
using Heaveline.Rides;

namespace Heaveline.Studies;

/// <summary>How cars ride on a random road.</summary>
public sealed record RideAnswer : Answer
{
    /// <summary>Figure of the measures over speed.</summary>
    public const string Sweep = "sweep";

    /// <summary>Figure of pitch as it is and as the standard counts it, of the first car; only where it has a seat.</summary>
    public const string Count = "count";

    /// <summary>Figure of the spectra of the first car at the first speed, with the wheelbase filter.</summary>
    public const string Spectra = "spectra";

    /// <summary>Figure of the way from road to body, of the same.</summary>
    public const string Transfer = "transfer";

    /// <summary>What was asked.</summary>
    public required RideAsked Asked { get; init; }

    /// <summary>The cars' rides, in the order in which they were asked for.</summary>
    public required ImmutableArray<CarRide> Cars { get; init; }

    /// <summary>Intervals within the stated doubts by speed; empty where none were asked for.</summary>
    public ImmutableArray<(double Speed, JointStudy Study)> Doubts { get; init; } = [];

    private IReadOnlyList<(string Name, IReadOnlyList<RandomResponse> Responses)> Responses =>
        [.. Cars.Select(c => (c.Name, c.Responses))];

    private IReadOnlyList<IReadOnlyList<RandomPass>>? InTime => Asked.InTime ? [.. Cars.Select(c => c.InTime!)] : null;

    private string Load => LoadedCar.LoadsOf(Asked.Cars);

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Head =>
        [new("road", $"On a random road of {Asked.Road.Name} (ISO 8608, geometric mean), {Load}.")];

    /// <summary>A table a car, and where intervals were asked for tables of them.</summary>
    public override IReadOnlyList<FactTable> Tables => [.. Cars.Select(Table).Where(t => t.Rows.Count > 0), .. Doubts.SelectMany(Intervals)];

    /// <summary>Of these the rows that matter most, of the seat asked for or the first, and the intervals.</summary>
    public override IReadOnlyList<FactTable> ShortTables
    {
        get
        {
            var seats = Asked.Cars[0].Car.Seats;
            var seat = seats.FirstOrDefault(s => s.Name == Asked.Seat) ?? (seats.Count > 0 ? seats[0] : null);
            var keys = RideCatalogue.Of(seat is null ? [] : [SeatPlace.Of(seat.Name)]).Where(m => m.Uses.HasFlag(MeasureUse.Short))
                .Select(m => m.Key).ToHashSet();
            return [.. Tables.Select(t => Cars.Any(c => c.Name == t.Title) ? t.Without([.. t.Rows.Select(r => r.Key).Where(IsMore)]) : t)];

            bool IsMore(string key) => !keys.Any(k => key == k || key.StartsWith($"{k}-in-time", StringComparison.Ordinal));
        }
    }

    /// <summary>
    /// Where a response must be doubted: of several speeds each doubt is told once, from where on, in the words of the fastest; of friction that
    /// sticks up to where, in the words of the slowest.
    /// </summary>
    public override IReadOnlyList<string> Cautions =>
    [
        .. from car in Cars
           from response in car.Responses
           from doubt in RideCautions.Of(response)
           group (response.Speed, doubt.Text) by (car.Name, doubt.Id) into told
           let fastest = told.MaxBy(t => t.Speed)
           let slowest = told.MinBy(t => t.Speed)
           let isOfTheSlow = told.Key.Id == StickingFriction.Id
           let at = slowest.Speed == fastest.Speed ? $"at {At(slowest.Speed)}"
               : isOfTheSlow ? $"up to {At(fastest.Speed)}, here at {At(slowest.Speed)}"
               : $"from {At(slowest.Speed)} on, here at {At(fastest.Speed)}"
           select $"{told.Key.Name} {at}: {(isOfTheSlow ? slowest : fastest).Text}",
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Sentences =>
    [
        .. Doubts.IsEmpty ? [] : new[] { new Sentence("doubts", DoubtTables.Words(Doubts[^1].Study, Cars.Length > 1)) },
        new("both", RideWords.Both),
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Closing => [Studies.Cautions.Short];

    /// <inheritdoc/>
    public override IReadOnlyList<Source> Sources =>
    [
        Answers.Sources.RoadClasses, Answers.Sources.Linearisation, Answers.Sources.Comfort, Answers.Sources.Weightings,
        .. Doubts.IsEmpty ? [] : new[] { Answers.Sources.Draws },
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<string> FigureIds =>
        Asked.Cars[0].Car.Seats.Count > 0 ? [Sweep, Count, Spectra, Transfer] : [Sweep, Spectra, Transfer];

    /// <inheritdoc/>
    public override string? Failure => Cars.FirstOrDefault(c => c.Responses.All(r => r.Outcome == RandomOutcome.NotConverged)) is { } none
        ? $"{none.Name}: no ride at any speed. {none.Responses[0].OutcomeSentence}"
        : null;

    /// <inheritdoc/>
    public override JsonObject Facts => new()
    {
        ["road"] = Asked.Road.Name,
        ["load"] = Load,
        ["cautions"] = TablesJson.Texts([.. Cautions, .. Sentences.Where(s => s.Id == "doubts").Select(s => s.Text)]),
    };

    /// <inheritdoc/>
    public override Figure Figure(string id)
    {
        var first = Cars[0].Responses[0];
        return id switch
        {
            Sweep => RideSweepFigure.Of(Responses, InTime, Asked.Seat),
            Count when Asked.Cars[0].Car.Seats is { Count: > 0 } seats =>
                PitchCountFigure.Of(Cars[0].Responses, seats.FirstOrDefault(s => s.Name == Asked.Seat) ?? seats[0]),
            Spectra => RideSpectraFigure.Of(first),
            Transfer => TransferFigure.Of(first.Model, first.Speed),
            _ => base.Figure(id),
        };
    }

    /// <summary>The table of one car.</summary>
    public FactTable Table(CarRide car)
    {
        ArgumentNullException.ThrowIfNull(car);
        return RideTable.Of(car.Name, [.. RideStudy.Some(Asked).Select(i => car.Responses[i])], car.InTime);
    }

    private static string At(double speed) => FormattableString.Invariant($"{In.KilometresPerHour.Of(speed):0.#} km/h");

    private IEnumerable<FactTable> Intervals((double Speed, JointStudy Study) at) => DoubtTables.Of(
        FormattableString.Invariant($"At {In.KilometresPerHour.Of(at.Speed):0.#} km/h"),
        [.. Cars.Select(c => c.Name)],
        RideCatalogue.Of(Asked.Cars[0].Car),
        at.Study);
}
