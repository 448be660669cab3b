using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Web.Serving;
using Heaveline.Web.Tuning;

namespace Heaveline.Web.Pages.Passes;

/// <summary>
/// Computes what the page shows. Files are read when a state names them; while sliders move, what has been read, and the former state, are kept.
/// One reader's page has one desk.
/// </summary>
internal sealed class PassDesk(GarageView garageView)
{
    /// <summary>Longest crossing that the page computes, s: a slider must be answered while it is held.</summary>
    public const double Longest = 40.0;

    private readonly Dictionary<string, CarReading> readings = [];
    private (string Name, Road Road)? lastRoad;
    private (string Key, Crossing? Crossing, string? Problem) lastFormer;

    /// <summary>Lets go of every file read: they are read anew for the next state.</summary>
    public void Forget()
    {
        readings.Clear();
        lastRoad = null;
        lastFormer = default;
    }

    /// <summary>A state computed.</summary>
    /// <param name="state">The state.</param>
    /// <param name="full">Whether each crossing is computed twice to state its own error: for a state at rest.</param>
    /// <exception cref="PassProblemException">A file or a name is not what the state needs.</exception>
    /// <exception cref="RefusedValueException">A value is not possible for this car.</exception>
    public PassView See(PassState state, bool full)
    {
        var reading = Read(state.Car);
        var described = reading.Car!;
        var load = LoadFor(state, described, reading);
        var road = RoadOf(state.Road);
        var driven = DrivenRoad(state, road);
        var speed = SpeedOf(state);
        var isCut = (Math.Max(driven.End, driven.EventEnd ?? 0.0) + described.Wheelbase.Si) / speed > Longest;
        var options = PassOptions.Default with { StatesError = full, Duration = isCut ? Longest : null };

        var car = Settings.Apply(described, state.Values, state.InertiaGrows);
        var loaded = Luggage.On(LoadOf(car, load.Name) ?? load, car, state.Values.GetValueOrDefault(Luggage.Key));
        var now = Cross("as set", RideModel.Of(car, loaded), driven, speed, options);
        var (former, problem) = FormerOf(state, load.Name, described, car, loaded, driven, speed, options);
        return new PassView { State = state, Reading = reading, Described = described, Load = load, Road = road, Now = now, Former = former, FormerProblem = problem, IsCut = isCut };
    }

    /// <summary>The value of a spring setting that gives its axle a ride frequency.</summary>
    public double RateFor(PassState state, SpringSetting spring, double hertz)
    {
        var described = Read(state.Car).Car!;
        var car = Settings.Apply(described, state.Values, state.InertiaGrows);
        var load = LoadFor(state, described, Read(state.Car));
        return spring.ValueFor(RideModel.Of(car, Luggage.On(LoadOf(car, load.Name) ?? load, car, state.Values.GetValueOrDefault(Luggage.Key))), described, hertz);
    }

    /// <summary>A load state of a car by its name; the state described is one too. Null when there is none of that name.</summary>
    public static LoadState? LoadOf(Car car, string? name) =>
        name == LoadState.Reference.Name ? LoadState.Reference : car.LoadStates.FirstOrDefault(state => state.Name == name);

    /// <summary>Height of a road's obstacle from the level before it, m: its furthest place up or down.</summary>
    public static double HeightOf(Road road)
    {
        const int Places = 400;
        var furthest = 0.0;
        for (var i = 0; i <= Places; i++)
        {
            var x = road.Start + ((road.End - road.Start) * i / Places);
            foreach (var track in new[] { road.Left, road.Right })
            {
                var height = track.Height(x) - track.StartHeight;
                furthest = Math.Abs(height) > Math.Abs(furthest) ? height : furthest;
            }
        }

        return furthest;
    }

    private CarReading Read(string name)
    {
        if (!readings.TryGetValue(name, out var reading))
        {
            reading = garageView.Car(name) ?? throw new PassProblemException("car", $"There is no car called “{name}” in this garage", "Choose one of those that are here.");
            if (reading.Car is null)
            {
                throw new PassProblemException("car", $"The file of “{name}” is refused", "What the file says must be put right first.") { Details = reading.Format() };
            }

            readings[name] = reading;
        }

        return reading;
    }

    private static LoadState LoadFor(PassState state, Car car, CarReading reading) => state.Load is null
        ? car.LoadStates.Count > 0 ? car.LoadStates[0] : LoadState.Reference
        : LoadOf(car, state.Load) ?? throw new PassProblemException("load", $"{reading.Car!.Name} has no load state called “{state.Load}”", "Choose one of those that its file has.");

    private Road RoadOf(string name)
    {
        if (lastRoad is { } last && last.Name == name)
        {
            return last.Road;
        }

        var reading = garageView.Road(name) ?? throw new PassProblemException("road", $"There is no road called “{name}”", "Choose one of those in the list.");
        var road = reading.Road ?? throw new PassProblemException("road", $"The road “{name}” is refused", "What its file says must be put right first.") { Details = reading.Format() };
        lastRoad = (name, road);
        return road;
    }

    private static Road DrivenRoad(PassState state, Road road)
    {
        if (road.Event is null || !state.Values.TryGetValue(PassState.Height, out var wanted))
        {
            return road;
        }

        if (!(wanted is > 0.0 and <= 1000.0))
        {
            throw new RefusedValueException("Obstacle height", $"{Rounded.Text(wanted)} mm", "above 0 and at most 1000 mm", "Its shape is stretched to this height.");
        }

        var factor = wanted / 1000.0 / Math.Abs(HeightOf(road));
        var left = road.Left.Scaled(factor);
        return road with
        {
            Left = left,
            Right = ReferenceEquals(road.Left, road.Right) ? left : road.Right.Scaled(factor),
            Caption = FormattableString.Invariant($"{road.Caption}, its height made {Rounded.Text(Math.Round(wanted, 1))} mm"),
        };
    }

    private static double SpeedOf(PassState state)
    {
        var speed = state.KilometresPerHour;
        return speed is >= 2.0 and <= 300.0 ? In.KilometresPerHour.ToSi(speed) : throw new RefusedValueException("Speed", $"{Rounded.Text(speed)} km/h", "between 2 and 300 km/h", "Give a driving speed.");
    }

    private (Crossing?, string?) FormerOf(PassState state, string load, Car described, Car car, LoadState loaded, Road driven, double speed, PassOptions options)
    {
        // Nothing changed, nothing to set it against.
        if (state.Beside is null && ReferenceEquals(car, described) && loaded.Name == load)
        {
            return (null, null);
        }

        var key = (state with { Values = state.Values.RemoveRange(Settings.All(false).Select(setting => setting.Key)).Remove(Luggage.Key), AsFrequencies = false, InertiaGrows = false }).Query + (state.Beside is null ? load : "") + options.StatesError;
        if (lastFormer.Key != key)
        {
            lastFormer = (key, null, null);
            try
            {
                lastFormer.Crossing = Former(state.Beside, load, described, driven, speed, options);
            }
            catch (RefusedValueException refused)
            {
                lastFormer.Problem = $"Nothing is drawn behind it. {refused.Message}";
            }
            catch (PassProblemException problem)
            {
                lastFormer.Problem = $"Nothing is drawn behind it. {problem.Message}.";
            }
        }

        return (lastFormer.Crossing, lastFormer.Problem);
    }

    private Crossing Former(string? beside, string load, Car described, Road driven, double speed, PassOptions options)
    {
        if (beside is null)
        {
            return Cross("as described", RideModel.Of(described, LoadOf(described, load)!), driven, speed, options);
        }

        var other = Read(beside).Car!;
        var state = LoadOf(other, load) ?? (other.LoadStates.Count > 0 ? other.LoadStates[0] : LoadState.Reference);
        return Cross(beside, RideModel.Of(other, state), driven, speed, options);
    }

    private static Crossing Cross(string name, RideModel model, Road road, double speed, PassOptions options)
    {
        var pass = Pass.Of(model, road, speed, options);
        return new Crossing(name, pass, PassMeasures.Of(pass));
    }
}
