using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>The dipped headlamp: where it is and how far its cut-off points down in the reference state.</summary>
public sealed record Headlamp
{
    /// <summary>Height of the lamp above the ground, m.</summary>
    public required Amount<Length> Height { get; init => field = Checked.Within(value, 0.2, 2.0, "Measure to the middle of the lens."); }

    /// <summary>Lamp ahead of the front axle, m.</summary>
    public Amount<Length> AheadOfFrontAxle { get; init => field = Checked.Within(value, -2.0, 4.0, "Behind the axle is negative."); } = new(0.0);

    /// <summary>Drop of the cut-off per distance (–), 0.01 is 1 cm per metre. Downwards positive, 0 to 0.1.</summary>
    public required Amount<Plain> Drop { get; init => field = Checked.Within(value, 0.0, 0.1, "1 to 1.5 % is a usual setting."); }

    /// <summary>The printed rule that its drop is held against; null for none.</summary>
    public HeadlampRule? Rule { get; init; }

    /// <summary>Least drop of a range of the user's own (–), for a rule that is not built in; null for none.</summary>
    public Amount<Plain>? LeastDrop { get; init => field = value is { } v ? Checked.Within(v, -0.1, 0.1, "Read it in the rule that holds.") : null; }

    /// <summary>Greatest drop of that range (–).</summary>
    public Amount<Plain>? GreatestDrop
    {
        get;
        init => field = value is { } v ? Checked.Within(v, -0.1, 0.1, "Read it in the rule that holds.") : null;
    }
}
