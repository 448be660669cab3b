using Heaveline.Quantities;

namespace Heaveline.Tests.Files;

/// <summary>A record that refuses in its <c>init</c> accessors, as those of the core do.</summary>
internal sealed record Coil
{
    public required Amount<Stiffness> Rate
    {
        get;
        init => field = Checked.Positive(value, "Give the rate of one spring as a positive number, or give the wire's dimensions instead.");
    }

    public required Amount<Length> FreeLength
    {
        get;
        init => field = Checked.Within(Checked.Positive(value, "Measure it without load."), 0.01, 2.0, "Measure it without load.");
    }

    public Sample.Where At { get; init; }
}
