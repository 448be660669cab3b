namespace Heaveline.Search;

/// <summary>One number of a use case among those of a <see cref="SetupRow"/>.</summary>
/// <param name="Kind">Which wish it is part of: settling, hit or ride.</param>
/// <param name="At">Its place among the numbers.</param>
/// <param name="Weight">What its use case weighs (–), above 0.</param>
/// <param name="Floor">Below this number of the car as it is nobody feels it, and it does not count.</param>
/// <param name="Name">The use case, in words; columns are summed in the order of their names, so that no order of asking changes a bit.</param>
internal sealed record UseColumn(WishKind Kind, int At, double Weight, double Floor, string Name);
