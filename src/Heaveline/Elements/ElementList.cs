namespace Heaveline.Elements;

/// <summary>
/// The elements of one car as placed laws, in wheel travel from the reference state: the one list that every solver reads. Corners: front left, front
/// right, rear left, rear right.
/// </summary>
internal sealed class ElementList
{
    /// <summary>Spring of each corner.</summary>
    public required IReadOnlyList<Element> Springs { get; init; }

    /// <summary>Damper of each corner.</summary>
    public required IReadOnlyList<Element> Dampers { get; init; }

    /// <summary>Bump stop of each corner, or null.</summary>
    public IReadOnlyList<Element?> BumpStops { get; init; } = new Element?[4];

    /// <summary>Rebound stop of each corner, or null.</summary>
    public IReadOnlyList<Element?> ReboundStops { get; init; } = new Element?[4];

    /// <summary>Friction of each corner, or null.</summary>
    public IReadOnlyList<Element?> Frictions { get; init; } = new Element?[4];

    /// <summary>Anti-roll bars, front and rear, or null.</summary>
    public IReadOnlyList<Element?> Bars { get; init; } = new Element?[2];

    /// <summary>Common spring of each side, left and right; empty without.</summary>
    public IReadOnlyList<Element> CommonSprings { get; init; } = [];

    /// <summary>Common damper of each side; empty without.</summary>
    public IReadOnlyList<Element> CommonDampers { get; init; } = [];

    /// <summary>Accumulator of each corner; empty without a fluid line, and where it is wide open.</summary>
    public IReadOnlyList<Element> Accumulators { get; init; } = [];

    /// <summary>What resists the flow of each side; empty where nothing flows, and without resistance.</summary>
    public IReadOnlyList<Element> Resistances { get; init; } = [];

    /// <summary>The line of each side through which fluid flows; null where none does.</summary>
    public SideLine? Line { get; init; }

    /// <summary>Whether there is a gauge pressure between front and rear at all, in accumulators or in common springs.</summary>
    public bool HoldsFluid { get; init; }

    /// <summary>Every element.</summary>
    public IReadOnlyList<Element> All => field ??=
    [
        .. Springs, .. Dampers, .. BumpStops.OfType<Element>(), .. ReboundStops.OfType<Element>(), .. Bars.OfType<Element>(),
        .. Frictions.OfType<Element>(),
        .. CommonSprings, .. CommonDampers, .. Accumulators, .. Resistances,
    ];

    /// <summary>Whether every law is straight between its corners.</summary>
    public bool IsPiecewiseStraight => All.All(element => element.CurvedRatio is null && !element.CurvedLaws.Any());

    /// <summary>Travel at which the bump stops touch, m: infinite without a stop.</summary>
    public IReadOnlyList<double> BumpTouch => field ??= [.. BumpStops.Select(stop => stop?.Touch ?? double.PositiveInfinity)];

    /// <summary>Travel at which the rebound stops touch, m, negative: infinite without a stop.</summary>
    public IReadOnlyList<double> ReboundTouch => field ??= [.. ReboundStops.Select(stop => stop?.Touch ?? double.NegativeInfinity)];

    /// <summary>Travel past which the model does not reach, m: bump.</summary>
    public IReadOnlyList<double> BumpLimit => field ??= [.. Enumerable.Range(0, 4).Select(i => LimitsAt(i).Most)];

    /// <summary>Travel past which the model does not reach, m: rebound, negative.</summary>
    public IReadOnlyList<double> ReboundLimit => field ??= [.. Enumerable.Range(0, 4).Select(i => LimitsAt(i).Least)];

    /// <summary>Least and greatest travel that the elements of a corner allow, m.</summary>
    private (double Least, double Most) LimitsAt(int corner) => Limits(All.Where(element => element.Corner == corner));

    /// <summary>Least and greatest travel that elements allow together, m.</summary>
    public static (double Least, double Most) Limits(IEnumerable<Element?> elements)
    {
        var (least, most) = (double.NegativeInfinity, double.PositiveInfinity);
        foreach (var element in elements.OfType<Element>())
        {
            (least, most) = (Math.Max(least, element.Limits.Least), Math.Min(most, element.Limits.Most));
        }

        return (least, most);
    }
}
