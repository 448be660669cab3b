using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Rules;
using Heaveline.Tuning;

namespace Heaveline.Studies;

/// <summary>A front–rear interconnection on the bench.</summary>
public static class LinkStudy
{
    // The 75 mm round-top hump of roads and car parks, below its usual speed, at it and well above.
    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) });
    private static readonly double[] Speeds = [.. new[] { 20.0, 40.0, 80.0 }.Select(In.KilometresPerHour.ToSi)];

    private static readonly Choice Car = Choices.Car with { Says = "A car with an interconnection." };

    /// <summary>The question as a command offers it.</summary>
    public static Question<LinkAsked, LinkAnswer> Question { get; } = new()
    {
        Word = "link",
        Says =
            """
            Put a car's front–rear interconnection on the bench: stiffness and damping in heave, pitch, roll and warp with it and without, the fluid
            line's mass and resistance, the price in braking against separate springs as stiff in heave, and what joining does over a hump.

            Example:
              heaveline link examples/garage/pebble-fluid-car.yaml
            """,
        Choices = [Car, Choices.Load],
        Reads = Read,
        Answers = Run,
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
        return new LinkAnswer
        {
            Asked = asked,
            Bench = InterconnectionBench.Of(model)!,
            Hump = Hump.CaptionFor(model.Rolls),
            Crossings =
            [
                .. Speeds.Select(speed => new LinkCrossing
                {
                    Speed = speed,
                    With = Pass.Of(model, Hump, speed, cancellation: stop),
                    Separate = separate is null ? null : Pass.Of(separate, Hump, speed, cancellation: stop),
                }),
            ],
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

    private static LinkAsked? Read(AskedReader reader)
    {
        if (reader.Car(Car, Choices.Load) is not { } car)
        {
            return null;
        }

        if (car.Car.Interconnection is not null)
        {
            return new LinkAsked { Car = car };
        }

        reader.Object(Car.Name, $"{car.Car.Name} has no interconnection; describe one under 'interconnection' in the car file.", isUsage: false);
        return null;
    }
}
