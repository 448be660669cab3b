using System.Collections.Immutable;
using Heaveline.Measures;
using Heaveline.Parts;
using Heaveline.Search;

namespace Heaveline.Studies;

/// <summary>A setup of the shortlist with all that is told of it.</summary>
/// <param name="Letter">Its letter, A for the first.</param>
/// <param name="Entry">What it came to, and why it is there.</param>
/// <param name="Fitted">The car with its parts.</param>
/// <param name="Full">The same standing under the fullest load.</param>
internal sealed record ChooseTold(string Letter, ShortlistEntry Entry, Fitted Fitted, CarAtRest Full)
{
    /// <summary>Where it is hardest against the car as it is.</summary>
    public ChooseHarder Harder { get; init; } = new(null, null);

    /// <summary>Its least tyre loads.</summary>
    public ChooseGrip Grip { get; init; } = new([]);

    /// <summary>Setups that the draws cannot tell from it, that are no worse in any wish beyond the doubt.</summary>
    public ImmutableArray<long> Alike { get; init; } = [];
}
