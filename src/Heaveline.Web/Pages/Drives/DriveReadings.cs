using Heaveline.Drives;
using Heaveline.Files.Drives;
using Heaveline.Files.Garages;
using Heaveline.Studies;
using Heaveline.Web.Serving;
using Heaveline.Web.Studying;

namespace Heaveline.Web.Pages.Drives;

/// <summary>
/// Reads drives of the garage and answers what they say. What was read of a log lately is kept: what a reader changes about a drive is mostly not its
/// log, and bumps alone are then looked for anew.
/// </summary>
internal sealed class DriveReadings(GarageView garage) : IDisposable
{
    private const int Capacity = 8;
    private readonly AnswerCache<DriveAnswer> read = new(Capacity);
    private readonly AnswerCache<DriveAnswer> latest = new(Capacity);
    private readonly AnswerCache<DriveAnswer> fitted = new(Capacity);
    private readonly AnswerCache<DriveAnswer> last = new(Capacity);
    private readonly Lock only = new();
    private readonly Lock onlyCar = new();

    /// <summary>The study of one drive.</summary>
    /// <param name="queue">A queue of what is short.</param>
    public PageStudy<DriveSource, DriveAnswer, DriveView> StudyIn(StudyQueue queue) => new(Answer, DriveView.Of, queue, Capacity);

    /// <summary>The study of a drive and of the one before the change.</summary>
    /// <param name="queue">A queue of what is short.</param>
    public PageStudy<DriveSource, ProveAnswer, ProofView> ProofIn(StudyQueue queue) => new(Prove, ProofView.Of, queue, Capacity);

    /// <summary>What a drive says; the bumps meanwhile, before the car.</summary>
    /// <param name="source">The drive as it lies in the garage.</param>
    /// <param name="run">How it is run.</param>
    /// <exception cref="LogRefusedException">Its files hold no log that can be read.</exception>
    /// <exception cref="Heaveline.Quantities.RefusedValueException">Gravity is missing, or nothing of the log is long enough.</exception>
    public DriveAnswer Answer(DriveSource source, StudyRun run)
    {
        var bumps = Bumps(source, run);
        if (fitted.Find(source.FitKey) is null)
        {
            run.Meanwhile?.Invoke(bumps);
            // Then the car near the last one of this log; the whole fit, with all its starts, takes its place.
            if (run.Meanwhile is { } meanwhile && last.Find(source.LogKey) is { } former
                && DriveStudy.NearCar(bumps, former.Identified, run.Cancellation) is { } near)
            {
                meanwhile(near);
            }
        }

        return Fitted(source, bumps, run.Cancellation);
    }

    public void Dispose()
    {
        read.Dispose();
        latest.Dispose();
        fitted.Dispose();
        last.Dispose();
    }

    // One at a time: two questions about one drive come together, and both need its log.
    private DriveAnswer Bumps(DriveSource source, StudyRun run)
    {
        lock (only)
        {
            if (latest.Find(source.Key) is { } asked)
            {
                return asked;
            }

            var known = read.Find(source.LogKey);
            if (known is null)
            {
                var reading = garage.Garage.Drives.Log(source.Folder, source.Sheet.Taken, run.Cancellation);
                known = DriveStudy.Bumps(Asked(source, reading.Log ?? throw new LogRefusedException(reading.Refusals)), null, run);
            }
            else
            {
                known = DriveStudy.Bumps(Asked(source, known.Asked.Log), known, run);
            }

            read.Keep(source.LogKey, known);
            latest.Keep(source.Key, known);
            return known;
        }
    }

    // Likewise; of what is written down most moves no car.
    private DriveAnswer Fitted(DriveSource source, DriveAnswer bumps, CancellationToken stop)
    {
        lock (onlyCar)
        {
            if (fitted.Find(source.FitKey) is { } known)
            {
                // What else that car tells may have been worked out since.
                return DriveStudy.WithCar(bumps, known.Identified, stop) with { Detail = known.Detail };
            }

            var found = DriveStudy.WithCar(bumps, stop);
            fitted.Keep(source.FitKey, found);
            last.Keep(source.LogKey, found);
            return found;
        }
    }

    private static DriveAsked Asked(DriveSource source, Log log) => new()
    {
        Log = log, Car = source.Car, Settings = source.Settings, Advice = DriveAdvice.Page,
    };

    private RecordedDrive Recorded(DriveSource source) => source.Recorded(garage.Garage, name => name);

    private ProveAnswer Prove(DriveSource source, StudyRun run)
    {
        var (before, after) = (Bumps(source.Before!, run), Bumps(source, run));
        var asked = new ProveAsked
        {
            Before = before.Asked.Log, After = after.Asked.Log, OfBefore = before.Asked.Settings, OfAfter = after.Asked.Settings,
            Same = source.Sheet.Same, Advice = DriveAdvice.Page, Car = before.Asked.Car, CarAfter = after.Asked.Car,
        }
        .AsWrittenDown(Recorded(source.Before!), Recorded(source));
        // The cars come later, some seconds' work: what changed in them, and the speeds that the delays between their axles tell.
        if (run.Meanwhile is { } meanwhile && (fitted.Find(source.Before!.FitKey) is null || fitted.Find(source.FitKey) is null))
        {
            meanwhile(ProveStudy.AsLogged(asked, ProvedDrive.Of(before), ProvedDrive.Of(after), run.Cancellation));
        }

        return ProveStudy.Of(
            asked with { WhatChanged = before.Asked.Settings.Wheelbase is not null && after.Asked.Settings.Wheelbase is not null },
            ProvedDrive.Of(Fitted(source.Before!, before, run.Cancellation)),
            ProvedDrive.Of(Fitted(source, after, run.Cancellation)),
            run.Cancellation);
    }
}
