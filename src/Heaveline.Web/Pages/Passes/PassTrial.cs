using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Studies;
using Heaveline.Web.Serving;
using Heaveline.Web.Tuning;

namespace Heaveline.Web.Pages.Passes;

/// <summary>
/// A state of the page as what the study of a pass is asked: the car as set, and what it is set against. Files are read when a state names them;
/// while sliders move, what has been read, and the former pass, are kept. One reader's page has one trial.
/// </summary>
internal sealed class PassTrial(GarageView garageView)
{
    /// <summary>Longest crossing that the page computes, s: a slider must be answered while it is held.</summary>
    public const double Longest = 40.0;

    private readonly CachedFinder finder = new(garageView);
    private (string Key, PassAnswer? Answer, string? Problem) former;

    /// <summary>Lets go of every file read: they are read anew for the next state.</summary>
    public void Forget()
    {
        finder.Forget();
        former = default;
    }

    /// <summary>A state computed; null where it names what there is not, with the objections to it.</summary>
    /// <param name="state">The state.</param>
    /// <param name="full">Whether each pass is computed twice to state its own error: for a state at rest.</param>
    /// <exception cref="RefusedValueException">A value is not possible for this car.</exception>
    public (PassView? View, IReadOnlyList<Objection> Objections) See(PassState state, bool full)
    {
        var reader = new AskedReader(state.Words, finder);
        var car = reader.Car(Choices.Car, Choices.Load);
        var road = reader.Road(Choices.Road);
        var speed = reader.Speed(Choices.Speed);
        if (reader.IsRefused || state.Unread.Count > 0)
        {
            return (null, [.. reader.Objections, .. state.Objections]);
        }

        var (described, load) = (car!.Car, car.Load);
        var driven = DrivenRoad(state, road!);
        var isCut = (Math.Max(driven.End, driven.EventEnd ?? 0.0) + described.Wheelbase.Si) / speed!.Value > Longest;
        var set = SetCar(state, described, load);
        var isSet = !ReferenceEquals(set.Car, described) || set.Load.Name != load.Name;
        var beside = state.Beside is { } named ? finder.Car(named) : null;
        var found = finder.Car(state.Car);
        // Two cars as they are described stand under their own names.
        string[] names = beside?.Value is { } other && !isSet
            ? [.. NamesApart.Of([(other.Name, beside.ShortName), (described.Name, found.ShortName)])]
            : [state.Beside ?? "", set.Name];
        set = set with { Name = names[1] };
        var asked = new PassAsked
        {
            Car = set,
            Road = driven,
            Speed = speed.Value,
            Options = new()
            {
                Method = full ? FixedStep.Default : FixedStep.Once,
                Record = PassRecord.Default with { Duration = isCut ? Longest : null },
            },
        };
        var now = PassStudy.Run(asked);
        // Nothing changed, nothing to set it against.
        var (answer, problem) = state.Beside is null && !isSet ? (null, null) : Former(state, car, asked);
        return (new PassView
        {
            State = state,
            Reading = finder.Reading(state.Car)!,
            Described = described,
            Load = load,
            Road = road!,
            Now = now,
            Former = state.Beside is null || answer is null ? answer : answer with { Name = names[0] },
            IsTurned = !isSet && beside?.Value is not null && BaseFirst.IsVariantOf(beside.Inputs, found.Inputs),
            FormerProblem = problem,
            IsCut = isCut,
        }, []);
    }

    /// <summary>The value of a spring setting that gives its axle a ride frequency.</summary>
    /// <param name="view">What is shown.</param>
    /// <param name="state">Where the settings stand.</param>
    /// <param name="spring">The setting.</param>
    /// <param name="hertz">The ride frequency.</param>
    public static double RateFor(PassView view, PassState state, SpringSetting spring, double hertz) =>
        spring.ValueFor(SetCar(state, view.Described, view.Load).Model, view.Described, hertz);

    /// <summary>The car and its load with a state's settings on them.</summary>
    public static LoadedCar SetCar(PassState state, Car described, LoadState load)
    {
        var car = Settings.Apply(described, state.Values, state.InertiaGrows);
        return new LoadedCar(
            "as set", car, Luggage.On(LoadedCar.LoadNamed(car, load.Name) ?? load, car, state.Values.GetValueOrDefault(Luggage.Key)));
    }

    private static Road DrivenRoad(PassState state, Road road)
    {
        if (road.Event is null || !state.Values.TryGetValue(PassState.Height, out var wanted))
        {
            return road;
        }

        if (!(wanted is > 0.0 and <= 1000.0))
        {
            throw new RefusedValueException(
                "Obstacle height", $"{Rounded.Text(wanted)} mm", "above 0 and at most 1000 mm", "Its shape is stretched to this height.");
        }

        var factor = In.Millimetres.ToSi(wanted) / Math.Abs(ObstacleHeight.Of(road));
        var left = road.Left.Scaled(factor);
        return road with
        {
            Left = left,
            Right = ReferenceEquals(road.Left, road.Right) ? left : road.Right.Scaled(factor),
            Caption = FormattableString.Invariant($"{road.Caption}, its height made {Rounded.Text(Math.Round(wanted, 1))} mm"),
        };
    }

    private (PassAnswer?, string?) Former(PassState state, LoadedCar described, PassAsked now)
    {
        var drive = state with
        {
            Values = state.Values.RemoveRange(Settings.All(false).Select(setting => setting.Key)).Remove(Luggage.Key),
            AsFrequencies = false,
            InertiaGrows = false,
        };
        var key = drive.Query + (state.Beside is null ? described.Load.Name : "") + now.Options.Method;
        if (former.Key != key)
        {
            former = (key, null, null);
            var beside = state.Beside is null
                ? described with { Name = "as described" }
                : Beside(state.Beside, described.Load, out former.Problem);
            try
            {
                former.Answer = beside is null ? null : PassStudy.Run(now with { Car = beside });
            }
            catch (RefusedValueException refused)
            {
                former.Problem = $"Nothing is drawn behind it. {refused.Message}";
            }
        }

        return (former.Answer, former.Problem);
    }

    private LoadedCar? Beside(string name, LoadState load, out string? problem)
    {
        var found = finder.Car(name);
        problem = found.Value is null ? $"Nothing is drawn behind it. {found.Refusal}" : null;
        return found.Value is { } car ? LoadedCar.Beside(name, car, load) : null;
    }

    // What is found once is not looked for again while sliders move.
    private sealed class CachedFinder(GarageView garageView) : IFinder
    {
        private readonly Dictionary<string, (Found<Car> Found, Reading<Car>? Reading)> cars = new(StringComparer.Ordinal);
        private readonly Dictionary<string, Found<Road>> roads = new(StringComparer.Ordinal);

        public Found<Car> Car(string name) => Cached(name).Found;

        public Reading<Car>? Reading(string name) => Cached(name).Reading;

        public Found<Road> Road(string name)
        {
            if (!roads.TryGetValue(name, out var found))
            {
                found = ((IFinder)garageView).Road(name);
                if (found.Value is not null)
                {
                    roads[name] = found;
                }
            }

            return found;
        }

        public void Forget()
        {
            cars.Clear();
            roads.Clear();
        }

        private (Found<Car> Found, Reading<Car>? Reading) Cached(string name)
        {
            if (!cars.TryGetValue(name, out var kept))
            {
                var reading = garageView.Car(name);
                kept = (garageView.Found(name, reading), reading);
                if (reading?.Value is not null)
                {
                    cars[name] = kept;
                }
            }

            return kept;
        }
    }
}
