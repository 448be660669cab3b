using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Web.Studying;

namespace Heaveline.Web.Pages.Passes;

/// <summary>Pinned trials compared over speeds, by the study that compares cars.</summary>
/// <param name="queue">Where the work waits for its turn.</param>
internal sealed class TrialSpeeds(StudyQueue queue)
{
    private const double Slowest = 20.0;
    private const double Fastest = 80.0;
    private const double Step = 5.0;

    /// <summary>
    /// What is compared: the pinned trials, what is set now where it is none of them, and the car as described where there is one alone.
    /// </summary>
    /// <param name="view">What is looked at.</param>
    /// <exception cref="RefusedValueException">A trial is not possible for this car.</exception>
    public static CompareAsked Asked(PassView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var state = view.State;
        var named = state.Pins.Select(pin => (Name: NameOf(pin.Place, pin.Words(view.Described)), Pin: pin)).ToList();
        var now = PassPin.Of(state);
        if (named.All(one => one.Pin.Word != now.Word))
        {
            named.Add(("as set now", now));
        }

        if (named.Count == 1 && named[0].Pin.Word != PassPin.AsDescribed.Word)
        {
            named.Insert(0, ("as described", PassPin.AsDescribed));
        }

        return new CompareAsked
        {
            Cars = [.. named.Select(one => PassTrial.SetCar(one.Pin.On(state), view.Described, view.Load) with { Name = one.Name })],
            Road = PassTrial.DrivenRoad(state, view.Road),
            Speeds = [.. SpeedsAbout(state.KilometresPerHour).Select(speed => In.KilometresPerHour.ToSi(speed))],
        };
    }

    /// <summary>Drives them.</summary>
    /// <param name="asked">What is compared.</param>
    /// <param name="progress">Told the share done.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    /// <exception cref="NoAnswerException">They cannot be driven so, or too many wait.</exception>
    public Task<CompareAnswer> Run(CompareAsked asked, IProgress<double> progress, CancellationToken stop) => queue.Run(
        () => CompareStudy.Run(asked, new StudyRun { Progress = progress, Cancellation = stop, Degree = Environment.ProcessorCount }), stop);

    // Speeds of towns and country roads, and that which is looked at, km/h.
    private static IEnumerable<double> SpeedsAbout(double speed)
    {
        var (from, to) = (Math.Min(Slowest, speed), Math.Max(Fastest, speed));
        var even = Enumerable.Range(0, (int)((Fastest - Slowest) / Step) + 1).Select(n => Slowest + (n * Step));
        return even.Append(from).Append(to).Append(speed).Distinct().Order();
    }

    // Beside a chart's curve there is little room; the tray above says the rest of its letter.
    private static string NameOf(int place, string words)
    {
        const int Room = 20;
        return words.Length <= Room ? $"{TrialTrayLetters.Of(place)}, {words}" : $"{TrialTrayLetters.Of(place)}";
    }
}
