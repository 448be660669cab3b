using Heaveline.Quantities;

namespace Heaveline.Passes;

/// <summary>How a pass is run: with what it is solved and what is recorded. Immutable: change a copy with <c>with</c>.</summary>
public sealed record PassOptions
{
    /// <summary>The usual settings.</summary>
    public static PassOptions Default { get; } = new();

    /// <summary>With what it is solved. Default: fixed steps that state their own error.</summary>
    public PassMethod Method { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = FixedStep.Default;

    /// <summary>What is recorded.</summary>
    public PassRecord Record { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = PassRecord.Default;

    /// <summary>The steps, for passes that run side by side.</summary>
    /// <exception cref="RefusedValueException">Another method is asked for.</exception>
    internal FixedStep Steps => Method as FixedStep ?? throw new RefusedValueException(
        "method of passes side by side", "another than fixed steps", "fixed steps", "Run each pass alone, or take the stepped runs.");
}
