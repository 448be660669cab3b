using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>Who and what is in the vehicle.</summary>
public sealed record LoadState
{
    /// <summary>The empty vehicle: as it was weighed, with nothing added.</summary>
    public static LoadState Reference { get; } = new() { Name = "empty" };

    /// <summary>Its name ("four up with luggage").</summary>
    public required string Name { get; init => field = Checked.NotBlank(value, "Give the load state a name."); }

    /// <summary>What is added to the reference state.</summary>
    public IReadOnlyList<Load> Loads { get; init; } = [];
}
