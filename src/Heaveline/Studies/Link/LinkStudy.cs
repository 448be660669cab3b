using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Rules;
using Heaveline.Tuning;

namespace Heaveline.Studies;

/// <summary>A front–rear interconnection on the bench.</summary>
public static class LinkStudy
{
    private static readonly Choice Car = Choices.Car with { Says = "A car with an interconnection, or one that --link gives one." };

    private static readonly Choice Road = Choices.Road with
    {
        Says = "The bump: a road file, or the name of a road that comes with Heaveline. Without it: the round-top hump of car parks.",
        Usual = null,
    };

    private static readonly Choice Speeds = Choices.Speeds with
    {
        Says = "One speed or several with commas between. Without it: 20, 40 and 80 km/h.",
        Usual = null,
    };

    /// <summary>The rate of the common spring, as a trial of the page of the pass sets it.</summary>
    public static Choice Spring { get; } = new()
    {
        Name = new LinkSetting(IsDamper: false).Key,
        Kind = ChoiceKind.Quantity,
        Says = "Rate of the common spring of front and rear of each side, in the place of the file's; a car without one gets one that follows both "
            + "wheels one to one.",
        HelpName = "RATE",
    };

    /// <summary>The damping of the common damper.</summary>
    public static Choice Damper { get; } = new()
    {
        Name = new LinkSetting(IsDamper: true).Key,
        Kind = ChoiceKind.Quantity,
        Says = "Rate of the common damper beside it, in the place of the file's.",
        HelpName = "RATE",
    };

    /// <summary>The speed in hand on a page, where the passes are drawn; there as on the page of the pass where none is said.</summary>
    public static Choice At { get; } = Choices.Speed with { Usual = "40 km/h" };

    /// <summary>The question as a command offers it.</summary>
    public static Question<LinkAsked, LinkAnswer> Question { get; } = new()
    {
        Word = "link",
        Says =
            """
            Put a car's front–rear interconnection on the bench: stiffness and damping in heave, pitch, roll and warp with it and without, the fluid
            line's mass and resistance, the price in braking against separate springs as stiff in heave, and what joining does over a hump.

            Examples:
              heaveline link examples/garage/pebble-fluid-car.yaml
              heaveline link examples/garage/fern-saloon.yaml --link "2 N/mm" --link-damping "100 N s/m" \
                --road village-hump --speed "40 km/h"
            """,
        Choices = [Car, Choices.Load, Road, Speeds, Spring, Damper],
        Draws = new()
        {
            Name = "picture",
            Kind = ChoiceKind.Word,
            Says = "What --figure draws: the bench, or the passes at the middle speed.",
            HelpName = "PICTURE",
            Usual = LinkAnswer.Bars,
            Words = [LinkAnswer.Bars, LinkAnswer.Traces],
            WordIs = "picture",
        },
        Reads = reader => Read(reader, LinkStudy.Speeds, Road),
        Answers = Run,
    };

    /// <summary>The question as a page offers it: over the bump in hand, at the speed in hand beside the usual ones.</summary>
    public static Question<LinkAsked, LinkAnswer> OnPage { get; } = Question with
    {
        Choices = [Choices.Car, Choices.Load, Choices.Road, At, Spring, Damper],
        Reads = reader => Read(reader, null, Choices.Road),
    };

    /// <summary>Puts the link on the bench and drives it over the hump.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="run">How it is run; null: plainly.</param>
    /// <exception cref="RefusedValueException">The car cannot stand so.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static LinkAnswer Run(LinkAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        var model = asked.Car.Model;
        var stop = run?.Cancellation ?? default;
        var separate = Separate(model);
        var crossings = new List<LinkCrossing>();
        foreach (var speed in asked.Speeds)
        {
            crossings.Add(new LinkCrossing
            {
                Speed = speed,
                With = Pass.Of(model, asked.Road, speed, cancellation: stop),
                Separate = separate is null ? null : Pass.Of(separate, asked.Road, speed, cancellation: stop),
                Before = asked.Before is null ? null : Pass.Of(asked.Before.Model, asked.Road, speed, cancellation: stop),
            });
            run?.Progress?.Report(crossings.Count / (double)asked.Speeds.Length);
        }

        return new LinkAnswer
        {
            Asked = asked,
            Bench = InterconnectionBench.Of(model)!,
            Hump = asked.Road.CaptionFor(model.Rolls),
            Crossings = crossings,
        };
    }

    // Set on the unloaded car, the load put in last: as the causes of pitch are told apart.
    private static RideModel? Separate(RideModel model)
    {
        try
        {
            return RideModel.Of(ModelChange.WithoutLink(RideModel.Of(model.Car)).Car, model.Load);
        }
        catch (RefusedValueException)
        {
            // No springs can stand in for this link: the answer says so and compares nothing.
            return null;
        }
    }

    private static LinkAsked? Read(AskedReader reader, Choice? several, Choice over)
    {
        var road = reader.Road(over);
        if (road is not null && LinkAsked.NoBump(road) is { } noBump)
        {
            reader.Object(over.Name, noBump, isUsage: false);
        }

        var one = several is null ? reader.Speed(At) : null;
        IReadOnlyList<double> speeds = several is not null && reader.Given.Of(several) is not null ? reader.Speeds(several) : LinkAsked.UsualSpeeds;
        var (rate, damping) = (reader.Amount<Stiffness>(Spring, "6 N/mm"), reader.Amount<DampingRate>(Damper, "300 N s/m"));
        if (reader.Car(Car, Choices.Load) is not { } car
            || Set(reader, car, rate, damping, isPage: several is null) is not { } set || reader.IsRefused)
        {
            return null;
        }

        return new LinkAsked
        {
            Car = set,
            Before = ReferenceEquals(set, car) ? null : car,
            Road = road ?? LinkAsked.UsualHump,
            Speeds = [.. speeds.Concat(one is { } here ? [here] : []).Distinct().Order()],
            Drawn = one,
        };
    }

    // The car with the link that is asked for; null, with the objection, where it has none.
    private static LoadedCar? Set(AskedReader reader, LoadedCar car, Amount<Stiffness>? rate, Amount<DampingRate>? damping, bool isPage)
    {
        var set = car.Car;
        foreach (var (choice, setting, value) in new (Choice, LinkSetting, double?)[]
        {
            (Spring, new(IsDamper: false), rate is { } spring ? In.NewtonsPerMillimetre.Of(spring.Si) : null),
            (Damper, new(IsDamper: true), damping?.Si),
        })
        {
            if (value is not { } wanted)
            {
                continue;
            }

            if (setting.ScaleOf(car.Car) is null)
            {
                reader.Object(choice.Name, $"{car.Car.Name} is joined by a fluid line, which has neither spring nor damper to set.", isUsage: false);
                return null;
            }

            try
            {
                set = setting.Apply(set, wanted);
            }
            catch (RefusedValueException refused)
            {
                reader.Object(choice.Name, refused.Message);
                return null;
            }
        }

        if (LinkSetting.WithoutIdle(set) is { Interconnection: not null } joined)
        {
            return ReferenceEquals(set, car.Car) ? car : car with { Car = joined };
        }

        reader.Object(
            Car.Name,
            $"{car.Car.Name} has no interconnection; describe one under 'interconnection' in the car file, or try one: "
                + (isPage ? "give it a spring." : "--link \"6 N/mm\"."),
            isUsage: false);
        return null;
    }
}
