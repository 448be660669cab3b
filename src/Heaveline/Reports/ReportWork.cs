using System.Collections.Immutable;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>What several parts of one report need, computed once and when first asked for. For one thread.</summary>
internal sealed class ReportWork
{
    private IReadOnlyList<PassAnswer>? passes;
    private WhyAnswer? why;
    private CostAnswer? cost;

    public ReportWork(ReportAsked asked, StudyRun run)
    {
        Choices = asked;
        // A part's own progress would run backwards from part to part.
        Run = run with { Progress = null, Meanwhile = null };
    }

    public ReportAsked Choices { get; }

    /// <summary>How the studies of the parts are run.</summary>
    public StudyRun Run { get; }

    /// <summary>Each car under the load.</summary>
    public ImmutableArray<LoadedCar> Cars => Choices.Cars;

    public bool Several => Cars.Length > 1;

    public bool Asked(PartKind kind) => Choices.Parts.Contains(kind);

    /// <summary>Every car's pass at the speed, all of one length of record.</summary>
    public IReadOnlyList<PassAnswer> Passes => passes ??= PassStudy.Run(Cars, Choices.Road, Choices.Speed, Run.Cancellation);

    /// <summary>Why the first car pitches; null where its pass did not run to its end.</summary>
    public WhyAnswer? Why => why ??= Passes[0].IsWhole
        ? WhyStudy.Run(new WhyAsked { Car = Cars[0], Road = Choices.Road, Speed = Choices.Speed }, Run)
        : null;

    /// <summary>What the change from the first car to each other costs; alone, where it stands.</summary>
    public CostAnswer Cost => cost ??= CostStudy.Run(new CostAsked { Cars = Cars, Draws = Choices.Draws, Seed = Choices.Seed }, Run);

    /// <summary>Where and how the cars drive, in words.</summary>
    public string Drive =>
        FormattableString.Invariant($"over {Choices.Road.CaptionFor(Cars[0].Model.Rolls)} at {In.KilometresPerHour.Of(Choices.Speed):0.#} km/h");
}
