using Heaveline.Quantities;
using Heaveline.Search;

namespace Heaveline.Tests.Search;

public class SetupSpaceTests
{
    private static SetupSpace Space(params int[] options) => new(
        [.. options.Select((n, k) => new OpenPlace($"place {k}", [.. Enumerable.Range(0, n).Select(i => new SetupOption($"part {i}", 10.0 * i))]))]);

    [Fact]
    public void Every_setup_has_one_number_and_every_number_one_setup()
    {
        var space = Space(3, 2, 4);
        Assert.Equal(24L, space.Count);
        var seen = new HashSet<string>();
        for (var setup = 0L; setup < space.Count; setup++)
        {
            var options = space.OptionsOf(setup);
            Assert.Equal(setup, space.NumberOf(options));
            Assert.True(seen.Add(string.Join(',', options)));
        }
    }

    [Fact]
    public void Changing_one_place_leaves_the_others()
    {
        var space = Space(3, 2, 4);
        var setup = space.NumberOf([2, 0, 3]);
        Assert.Equal([2, 1, 3], space.OptionsOf(space.With(setup, 1, 1)));
        Assert.Equal([0, 0, 3], space.OptionsOf(space.With(setup, 0, 0)));
    }

    [Fact]
    public void A_setup_costs_what_its_parts_cost_and_counts_the_places_that_changed()
    {
        var space = Space(3, 2, 4);
        Assert.Equal(0.0, space.Price(0L));
        Assert.Equal(0, space.Changed(0L));
        Assert.Equal(50.0, space.Price(space.NumberOf([2, 0, 3])));
        Assert.Equal(2, space.Changed(space.NumberOf([2, 0, 3])));
    }

    [Fact]
    public void Setups_alike_but_for_a_silent_place_are_driven_for_once_the_cheapest_first()
    {
        var space = new SetupSpace(
        [
            new OpenPlace("spring", [new SetupOption("as it is", 0.0), new SetupOption("softer", 80.0)]),
            new OpenPlace("bar", [new SetupOption("as it is", 0.0), new SetupOption("stiffer", 90.0), new SetupOption("softer", 60.0)])
            {
                IsSilent = true,
            },
        ]);
        Assert.Equal([0L, 3L], space.Loud());
        Assert.Equal(2L, space.LoudCount);
        Assert.Equal([3L, 5L, 4L], space.Alike(3L));
    }

    [Fact]
    public void More_setups_than_can_be_kept_are_refused_before_anything_is_made()
    {
        var refused = Assert.Throws<RefusedValueException>(() => Space(1000, 1000, 1000));
        Assert.Contains("Open fewer places", refused.Advice, StringComparison.Ordinal);
    }
}
