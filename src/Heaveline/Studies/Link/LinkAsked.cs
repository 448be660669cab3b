using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Which car's interconnection is put on the bench.</summary>
public sealed record LinkAsked
{
    /// <summary>The car; it has an interconnection.</summary>
    public required LoadedCar Car
    {
        get;
        init => field = value?.Car.Interconnection is not null
            ? value
            : throw new RefusedValueException("interconnection", "none", "there", "Describe one under 'interconnection' in the car file.");
    }
}
