using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>What several parts of one report need, computed once and when first asked for. For one thread.</summary>
internal sealed class ReportWork
{
    private IReadOnlyList<(Pass Pass, PassMeasures Measures)>? passes;

    public ReportWork(ReportChoices choices, CancellationToken cancellation)
    {
        Choices = choices;
        Cancellation = cancellation;
        Models = [.. choices.Cars.Select(car => RideModel.Of(car, Load(car, choices.Load)))];
    }

    public ReportChoices Choices { get; }

    public CancellationToken Cancellation { get; }

    /// <summary>Each car under the load.</summary>
    public IReadOnlyList<RideModel> Models { get; }

    /// <summary>The same for a study.</summary>
    public ImmutableArray<LoadedCar> Cars => [.. Models.Select(m => LoadedCar.Of(m.Car, m.Load))];

    /// <summary>How a study is run.</summary>
    public StudyRun Run => new() { Cancellation = Cancellation, Degree = Choices.Degree };

    public IReadOnlyList<string> Names => [.. Choices.Cars.Select(c => c.Name)];

    public bool Several => Models.Count > 1;

    public bool Asked(PartKind kind) => Choices.Parts.Contains(kind);

    /// <summary>Every car's pass at the speed, all of one length of record.</summary>
    public IReadOnlyList<(Pass Pass, PassMeasures Measures)> Passes => passes ??= At(Choices.Speed);

    /// <summary>Every car's pass at a speed.</summary>
    public IReadOnlyList<(Pass Pass, PassMeasures Measures)> At(double speed) =>
        [.. PassBatch.Of([.. Models.Select(m => new PassRequest(m, Choices.Road, speed))], cancellation: Cancellation).Select(p => (p, PassMeasures.Of(p)))];

    /// <summary>Where and how the cars drive, in words.</summary>
    public string Drive => FormattableString.Invariant($"over {Choices.Road.Caption} at {In.KilometresPerHour.Of(Choices.Speed):0.#} km/h");

    private static LoadState Load(Car car, string? name) =>
        name is null || name == LoadState.Reference.Name
            ? LoadState.Reference
            : car.LoadStates.FirstOrDefault(l => l.Name == name)
                ?? throw new RefusedValueException($"load state of {car.Name}", $"'{name}'", "one of the car's", $"It has: {string.Join(", ", car.LoadStates.Select(l => l.Name).Prepend(LoadState.Reference.Name))}.");
}
