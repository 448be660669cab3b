using Heaveline.Cars;
using Heaveline.Elements;

namespace Heaveline.Parts;

/// <summary>A car with parts fitted. What it costs and what must be said is worked out when it is asked for.</summary>
/// <param name="Before">The car before.</param>
/// <param name="Car">The car with the parts in it, in the reference state of the one before: heights come out of its model.</param>
/// <param name="Parts">The parts.</param>
public sealed record Fitted(Car Before, Car Car, IReadOnlyList<FittedPart> Parts) : FittingResult
{
    /// <summary>What each place costs.</summary>
    public IReadOnlyList<CostLine> Costs =>
    [
        .. Parts.Select(p => new CostLine(p.Place, p.Option.Name, p.IsThere ? 0 : p.Option.Part.PiecesOn(Car.Kind), p.Option.Price)
        {
            Fitting = p.IsThere ? null : p.Option.Part.FittingPrice,
        }),
    ];

    /// <summary>
    /// What all costs: pieces times price of every place, with its fitting where the list says what that costs; null where a price is not known.
    /// </summary>
    public Money? Cost
    {
        get
        {
            var sum = Money.None;
            for (var i = 0; i < Parts.Count; i++)
            {
                var part = Parts[i];
                if (part.IsThere)
                {
                    continue;
                }

                if (part.Option.Part.CostOn(Car.Kind) is not { } cost)
                {
                    return null;
                }

                sum += cost;
            }

            return sum;
        }
    }

    /// <summary>What bought springs ask of their seats, front first.</summary>
    public IReadOnlyList<Packer> Packers =>
        [.. Parts.Where(p => p.Place.Sort() == PartSort.Spring && !p.IsThere).OrderBy(p => p.Place).Select(PackerOf)];

    /// <summary>What must be said of the parts, place by place.</summary>
    public IReadOnlyList<FittingRemark> Remarks => FittingRemarks.Of(this);

    private Packer PackerOf(FittedPart part)
    {
        var end = part.Place.End()!.Value;
        var spring = Car.Axles[(int)end].Spring;
        var mean = new AxleFit(Car, end).Weighed;
        var stance = SpringStance.Of(Car.Axles[(int)end], mean, mean)!;
        var (needs, keeps) = (CoilForce.Under(spring.Law, mean), stance.Origin == StanceOrigin.HeightKept);
        return new Packer(
            part.Place,
            part.Option.Name,
            keeps ? null : needs - CoilForce.Under(spring.Law, stance.Carried),
            keeps,
            keeps ? needs - CoilForce.Under(spring.Swap!.Before.Law, mean) : null);
    }
}
