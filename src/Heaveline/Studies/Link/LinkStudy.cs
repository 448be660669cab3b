using Heaveline.Quantities;
using Heaveline.Tuning;

namespace Heaveline.Studies;

/// <summary>A front–rear interconnection on the bench.</summary>
public static class LinkStudy
{
    private static readonly Choice Car = Choices.Car with { Says = "A car with an interconnection." };

    /// <summary>The question as a command offers it.</summary>
    public static Question<LinkAsked, LinkAnswer> Question { get; } = new()
    {
        Word = "link",
        Says =
            """
            Put a car's front–rear interconnection on the bench: stiffness and damping in heave, pitch, roll and warp with it and without, the fluid
            line's mass and resistance, the price in braking.

            Example:
              heaveline link examples/garage/pebble-fluid-car.yaml
            """,
        Choices = [Car, Choices.Load],
        HasFigure = false,
        Reads = Read,
        Answers = (asked, _) => Run(asked),
    };

    /// <summary>Puts the link on the bench.</summary>
    /// <param name="asked">What is asked.</param>
    /// <exception cref="RefusedValueException">The car cannot stand so.</exception>
    public static LinkAnswer Run(LinkAsked asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        return new LinkAnswer { Asked = asked, Bench = InterconnectionBench.Of(asked.Car.Model)! };
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
