using Heaveline.Cars;
using Heaveline.Passes;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>What is asked of a pass: one car over one road at one speed.</summary>
public sealed record PassAsked
{
    /// <summary>The car under its load.</summary>
    public required LoadedCar Car { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>The road.</summary>
    public required Road Road { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>The speed, m/s; 0.5 to 120.</summary>
    public required double Speed { get; init; }

    /// <summary>How the pass is run.</summary>
    public PassOptions Options { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = PassOptions.Default;

    /// <summary>How the traces are recorded where they are taken away; null: as the pass itself.</summary>
    public PassRecord? Record { get; init; }

    /// <summary>The seat that is evaluated by the comfort standard; null for none.</summary>
    public Seat? Comfort { get; init; }
}
