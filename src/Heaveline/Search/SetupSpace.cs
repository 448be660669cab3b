using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Search;

/// <summary>
/// Every setup that the open places allow, one option at each, as whole numbers: the option at the first place counts most. The setups are never
/// listed; number 0 is the car as it is.
/// </summary>
internal sealed class SetupSpace
{
    /// <summary>Most setups of one study: their numbers are kept in columns.</summary>
    public const long Most = 20_000_000;

    private readonly long[] weight;
    private long[]? silent;

    /// <param name="places">The open places, at least one option each.</param>
    /// <exception cref="RefusedValueException">There are more setups than <see cref="Most"/>.</exception>
    public SetupSpace(IReadOnlyList<OpenPlace> places)
    {
        Places = [.. places];
        weight = new long[Places.Length];
        var count = 1L;
        for (var k = Places.Length - 1; k >= 0; k--)
        {
            weight[k] = count;
            count = checked(count * Places[k].Options.Length);
            if (count > Most)
            {
                throw new RefusedValueException(
                    "number of setups", FormattableString.Invariant($"more than {Most}"), FormattableString.Invariant($"at most {Most}"),
                    "Open fewer places, or leave parts out that are no choice.");
            }
        }

        Count = count;
    }

    /// <summary>The open places, in the order of the car: front before rear.</summary>
    public ImmutableArray<OpenPlace> Places { get; }

    /// <summary>How many setups there are.</summary>
    public long Count { get; }

    /// <summary>Which option stands at a place, from 0.</summary>
    public int OptionAt(long setup, int place) => (int)(setup / weight[place] % Places[place].Options.Length);

    /// <summary>The same setup with another option at a place.</summary>
    public long With(long setup, int place, int option) => setup + ((option - OptionAt(setup, place)) * weight[place]);

    /// <summary>The options of a setup, place by place.</summary>
    public int[] OptionsOf(long setup)
    {
        var options = new int[Places.Length];
        for (var k = 0; k < options.Length; k++)
        {
            options[k] = OptionAt(setup, k);
        }

        return options;
    }

    /// <summary>The setup of options, place by place.</summary>
    public long NumberOf(IReadOnlyList<int> options)
    {
        var setup = 0L;
        for (var k = 0; k < Places.Length; k++)
        {
            setup += options[k] * weight[k];
        }

        return setup;
    }

    /// <summary>At how many places something else stands than in the car as it is.</summary>
    public int Changed(long setup)
    {
        var changed = 0;
        for (var k = 0; k < Places.Length; k++)
        {
            changed += OptionAt(setup, k) == 0 ? 0 : 1;
        }

        return changed;
    }

    /// <summary>What a setup costs.</summary>
    public double Price(long setup)
    {
        var price = 0.0;
        for (var k = 0; k < Places.Length; k++)
        {
            price += Places[k].Options[OptionAt(setup, k)].Price;
        }

        return price;
    }

    /// <summary>Every setup in which the silent places stand as they are: as many crossings as there are to drive.</summary>
    public IEnumerable<long> Loud()
    {
        for (var setup = 0L; setup < Count; setup++)
        {
            if (IsLoud(setup))
            {
                yield return setup;
            }
        }
    }

    /// <summary>How many of these there are.</summary>
    public long LoudCount => Places.Where(p => !p.IsSilent).Aggregate(1L, (count, p) => count * p.Options.Length);

    /// <summary>The setups that cross a road as one does: every choice at the silent places, cheapest first, then fewest parts changed.</summary>
    /// <param name="setup">One in which the silent places stand as they are.</param>
    public IEnumerable<long> Alike(long setup) => (silent ??= Silent()).Select(choice => setup + choice);

    // The choices at the silent places alone; what they add to a price is the same for every setup.
    private long[] Silent()
    {
        List<long> all = [0L];
        for (var k = 0; k < Places.Length; k++)
        {
            if (Places[k].IsSilent)
            {
                var place = k;
                all = [.. all.SelectMany(one => Enumerable.Range(0, Places[place].Options.Length).Select(option => With(one, place, option)))];
            }
        }

        return [.. all.OrderBy(Price).ThenBy(Changed).ThenBy(one => one)];
    }

    private bool IsLoud(long setup)
    {
        for (var k = 0; k < Places.Length; k++)
        {
            if (Places[k].IsSilent && OptionAt(setup, k) != 0)
            {
                return false;
            }
        }

        return true;
    }
}
