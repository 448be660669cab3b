namespace Heaveline.Elements;

/// <summary>
/// The elements of one car as placed laws, in wheel travel from the reference state: the one list that every solver reads. Corners: front left, front
/// right, rear left, rear right.
/// </summary>
internal sealed class ElementList
{
    private Element[]? each;

    /// <summary>Spring of each corner.</summary>
    public required IReadOnlyList<Element> Springs { get; init; }

    /// <summary>Where the spring of each corner stands between its seats, or null.</summary>
    public IReadOnlyList<SpringStance?> Stances { get; init; } = new SpringStance?[4];

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
    public IReadOnlyList<Element> All => Each();

    /// <summary>Whether every law is straight between its corners.</summary>
    public bool IsPiecewiseStraight => All.All(element => element.CurvedRatio is null && !element.CurvedLaws.Any());

    /// <summary>Travel at which the bump stops touch, m: infinite without a stop.</summary>
    public IReadOnlyList<double> BumpTouch => field ??= Touch(BumpStops, double.PositiveInfinity);

    /// <summary>Travel at which the rebound stops touch, m, negative: infinite without a stop.</summary>
    public IReadOnlyList<double> ReboundTouch => field ??= Touch(ReboundStops, double.NegativeInfinity);

    /// <summary>Travel past which the model does not reach, m: bump.</summary>
    public IReadOnlyList<double> BumpLimit => field ??= Limits().Most;

    /// <summary>Travel past which the model does not reach, m: rebound, negative.</summary>
    public IReadOnlyList<double> ReboundLimit => field ??= Limits().Least;

    /// <summary>Whether the travel of a corner ends towards bump because the coils of its spring touch, before its stop is solid.</summary>
    public bool EndsInCoils(int corner) => Springs[corner] is { Touch: not null, Limits.Most: < double.PositiveInfinity and var most }
        && most <= BumpLimit[corner];

    /// <summary><see cref="All"/> for who asks often, not to be written to.</summary>
    public Element[] Each() => each ??= Gathered();

    // Least and greatest travel that the elements of each corner allow, m.
    private (double[] Least, double[] Most) Limits()
    {
        var (least, most) = (new double[4], new double[4]);
        Array.Fill(least, double.NegativeInfinity);
        Array.Fill(most, double.PositiveInfinity);
        foreach (var element in Each())
        {
            var i = element.Corner;
            (least[i], most[i]) = (Math.Max(least[i], element.Limits.Least), Math.Min(most[i], element.Limits.Most));
        }

        return (least, most);
    }

    private static double[] Touch(IReadOnlyList<Element?> stops, double without)
    {
        var touch = new double[stops.Count];
        for (var i = 0; i < touch.Length; i++)
        {
            touch[i] = stops[i]?.Touch ?? without;
        }

        return touch;
    }

    private Element[] Gathered()
    {
        ReadOnlySpan<IReadOnlyList<Element?>> kinds =
            [Springs, Dampers, BumpStops, ReboundStops, Bars, Frictions, CommonSprings, CommonDampers, Accumulators, Resistances];
        var all = new List<Element>(24);
        foreach (var kind in kinds)
        {
            for (var i = 0; i < kind.Count; i++)
            {
                if (kind[i] is { } element)
                {
                    all.Add(element);
                }
            }
        }

        return [.. all];
    }
}
