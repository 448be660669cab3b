using System.Collections.Immutable;

namespace Heaveline.Search;

/// <summary>What may stand at a place of a car: a part with its setting, or that which stands there now.</summary>
/// <param name="Name">What it is called ("Wren W3 at click 6").</param>
/// <param name="Price">What putting it there costs, in the currency of the study; 0 for what is there already.</param>
internal sealed record SetupOption(string Name, double Price)
{
    /// <summary>
    /// Its numbers, from which those of a whole setup are guessed: of a spring the logarithm of its rate, of a damper those of its forces. As many of
    /// every option of a place; none where nothing is to be guessed.
    /// </summary>
    public ImmutableArray<double> Numbers { get; init; } = [];

    /// <summary>
    /// How firm it is, by which the options of a place stand beside each other: of a spring or a bar its rate, of a damper its mean force. Null where
    /// no number says that.
    /// </summary>
    public double? Strength { get; init; }
}
