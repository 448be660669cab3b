using System.Collections.Immutable;
using Heaveline.Answers;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>What several parts of one report need, computed once and when first asked for. For one thread.</summary>
internal sealed class ReportWork
{
    private IReadOnlyList<PassAnswer>? passes;
    private WhyAnswer? why;
    private CureAnswer? cure;
    private ChooseAnswer? choice;
    private CostAnswer? cost;
    private ProveAnswer? proof;
    // Pieces that are kept are of the study of what to buy, and of nothing else in the report.
    private readonly StudyRun choosing;
    private readonly Dictionary<string, RecordedLog> logs = new(StringComparer.Ordinal);
    private readonly Dictionary<string, DriveAnswer> drives = new(StringComparer.Ordinal);

    public ReportWork(ReportAsked asked, StudyRun run)
    {
        Choices = asked;
        // A part's own progress would run backwards from part to part.
        Run = run with { Progress = null, Meanwhile = null, Through = null };
        choosing = Run with { Through = run.Through };
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

    /// <summary>What would make the first car pitch less; null where its pass did not run to its end, or the road has no bump.</summary>
    public CureAnswer? Cure => cure ??= Passes[0].IsWhole && Choices.Road.Event is not null
        ? CureStudy.Run(new CureAsked { Car = Cars[0], Road = Choices.Road, Speed = Choices.Speed, Seed = Choices.Seed }, Run)
        : null;

    /// <summary>What to buy, by the study of the report.</summary>
    /// <exception cref="RefusedValueException">There is no study.</exception>
    public ChooseAnswer Choice => choice ??= ChooseStudy.Run(
        Choices.Study ?? throw new RefusedValueException("study of the report", "none", "one", "Name a study, or leave the part out."), choosing);

    /// <summary>What the change from the first car to each other costs; alone, where it stands.</summary>
    public CostAnswer Cost => cost ??= CostStudy.Run(new CostAsked { Cars = Cars, Draws = Choices.Draws, Seed = Choices.Seed }, Run);

    /// <summary>The files of the logs that were read, as the command of the report calls them.</summary>
    public ImmutableArray<InputDigest> Logs =>
        [.. Choices.Read.SelectMany(drive => logs[drive.Path].Files.Select(f => f with { Name = drive.NameOf(f.Name) })).DistinctBy(f => f.Name)];

    /// <summary>Reads the logs that the parts need, before anything long is computed.</summary>
    /// <exception cref="RefusedValueException">A part has no drive, or the part of two drives has not two.</exception>
    public void ReadLogs()
    {
        if ((Asked(PartKind.Drive) && Choices.Drives.IsEmpty) || (Asked(PartKind.Prove) && Choices.Pair is null))
        {
            throw new RefusedValueException(
                "drives of the report",
                FormattableString.Invariant($"{Choices.Drives.Length}"),
                Asked(PartKind.Prove) ? "two, or one that follows on another" : "one or two",
                "Name the drives, or leave the part out.");
        }

        if (Asked(PartKind.Film) && Choices.Films is null)
        {
            throw new RefusedValueException("films of the report", "none", "one at least", "Name a film, or leave the part out.");
        }

        foreach (var drive in Choices.Read)
        {
            logs[drive.Path] = drive.Read(Run.Cancellation);
        }
    }

    /// <summary>What a drive says.</summary>
    public DriveAnswer Of(RecordedDrive drive)
    {
        if (!drives.TryGetValue(drive.Path, out var answer))
        {
            drives[drive.Path] = answer = DriveStudy.Run(
                new DriveAsked { Log = logs[drive.Path].Log, Car = drive.Car, Settings = drive.Settings, Advice = DriveAdvice.Report }, Run);
        }

        return answer;
    }

    /// <summary>Whether the change between the two drives worked.</summary>
    public ProveAnswer Proof
    {
        get
        {
            var (before, after) = Choices.Pair!.Value;
            // Of the same cars as the part of the drives: what one part refuses the other does not say.
            return proof ??= ProveStudy.Of(
                new ProveAsked
                {
                    Before = logs[before.Path].Log,
                    After = logs[after.Path].Log,
                    OfBefore = before.Settings,
                    OfAfter = after.Settings,
                    Same = Choices.SaidSame,
                    WhatChanged = before.Settings.Wheelbase is not null && after.Settings.Wheelbase is not null,
                    Car = before.Car,
                    CarAfter = after.Car,
                    Change = Choices.IsForecast ? after.Car?.Car : null,
                    Advice = DriveAdvice.Report,
                }
                .AsWrittenDown(before, after),
                ProvedDrive.Of(Of(before)),
                ProvedDrive.Of(Of(after)),
                Run.Cancellation);
        }
    }

    /// <summary>What the sites of a drive are called beside the other drive; null where no part holds two drives against each other.</summary>
    public SiteNames? NamesOf(RecordedDrive drive) =>
        Asked(PartKind.Prove) && Choices.Pair is var (before, after) && (drive.Path == before.Path || drive.Path == after.Path)
            ? new SiteNames(Proof.Matches, drive.Path == after.Path)
            : null;

    /// <summary>Where and how the cars drive, in words.</summary>
    public string Drive =>
        FormattableString.Invariant($"over {Choices.Road.CaptionFor(Cars[0].Model.Rolls)} at {In.KilometresPerHour.Of(Choices.Speed):0.#} km/h");
}
