using Heaveline.Cars;

namespace Heaveline.Parts;

/// <summary>What must hold once all parts are in: lengths against travel, stress, stroke.</summary>
internal static class FitChecks
{
    /// <summary>The first reason why a part does not fit among the others; null where it does.</summary>
    public static Misfit? First(Car fitted, Car before, IReadOnlyList<FittedPart> parts, int which)
    {
        var part = parts[which];
        return part.Place.Sort() switch
        {
            PartSort.Spring => Coils(fitted, part) ?? Stress(fitted, part) ?? Loose(fitted, part),
            PartSort.Damper => Stroke(fitted, part) ?? Looser(fitted, before, parts, part),
            PartSort.Stop => Springs(fitted, before, parts, part),
            PartSort.Link => Looser(fitted, before, parts, part),
            _ => null,
        };
    }

    /// <summary>Every reason.</summary>
    public static IEnumerable<Misfit> All(Car fitted, Car before, IReadOnlyList<FittedPart> parts, int which)
    {
        var part = parts[which];
        Misfit?[] all = part.Place.Sort() switch
        {
            PartSort.Spring => [Coils(fitted, part), Stress(fitted, part), Loose(fitted, part)],
            PartSort.Damper => [Stroke(fitted, part), Looser(fitted, before, parts, part)],
            _ => [First(fitted, before, parts, which)],
        };
        return all.OfType<Misfit>();
    }

    // Known trouble alone: coils past the touch of a stop without a described end are remarked upon.
    private static Misfit? Coils(Car fitted, FittedPart part)
    {
        var fit = new AxleFit(fitted, part.Place.End()!.Value);
        return fit.CoilsTouch is { } touch && fit.FullBump is { } full && touch <= full
            ? new Misfit(part.Place, part.Option.Name, MisfitKind.CoilsTouch, touch, full)
            : null;
    }

    private static Misfit? Stress(Car fitted, FittedPart part) =>
        part.Option.Part is CoilPart { AllowedStress: { } allowed } && new AxleFit(fitted, part.Place.End()!.Value).Stress is { } stress
        && stress > allowed.Si
            ? new Misfit(part.Place, part.Option.Name, MisfitKind.WireStress, stress, allowed.Si)
            : null;

    private static Misfit? Loose(Car fitted, FittedPart part) => LooseAt(fitted, part.Place.End()!.Value) is var (loose, hangs)
        ? new Misfit(part.Place, part.Option.Name, MisfitKind.LooseSpring, loose, hangs)
        : null;

    private static Misfit? Stroke(Car fitted, FittedPart part) =>
        part.Option.Part is DamperPart { Stroke: { } stroke } && new AxleFit(fitted, part.Place.End()!.Value).DamperTravel is { } needed
        && stroke.Si < needed
            ? new Misfit(part.Place, part.Option.Name, MisfitKind.ShortStroke, stroke.Si, needed)
            : null;

    // A damper's gas, or a link, may push a wheel down past the reach of springs that nobody changes; changed ones are judged themselves.
    private static Misfit? Looser(Car fitted, Car before, IReadOnlyList<FittedPart> parts, FittedPart part)
    {
        for (var end = AxleEnd.Front; end <= AxleEnd.Rear; end++)
        {
            if ((part.Place.End() ?? end) == end && !Has(parts, PartSort.Spring, end)
                && LooseAt(fitted, end) is var (loose, hangs) && LooseAt(before, end) is null)
            {
                return new Misfit(part.Place, part.Option.Name, MisfitKind.LooseSpring, loose, hangs);
            }
        }

        return null;
    }

    // A stop that lets the wheel further up may let the coils of the springs that are there touch.
    private static Misfit? Springs(Car fitted, Car before, IReadOnlyList<FittedPart> parts, FittedPart part)
    {
        var end = part.Place.End()!.Value;
        if (Has(parts, PartSort.Spring, end))
        {
            return null;
        }

        var (was, now) = (new AxleFit(before, end), new AxleFit(fitted, end));
        return now.CoilsTouch is { } touch && now.FullBump is { } full && touch <= full && !(was.FullBump is { } old && touch <= old)
            ? new Misfit(part.Place, part.Option.Name, MisfitKind.CoilsTouch, touch, full)
            : null;
    }

    private static (double Loose, double Hangs)? LooseAt(Car car, AxleEnd end) => new AxleFit(car, end).HangsLoose();

    private static bool Has(IReadOnlyList<FittedPart> parts, PartSort sort, AxleEnd end)
    {
        for (var i = 0; i < parts.Count; i++)
        {
            if (parts[i].Place.Sort() == sort && parts[i].Place.End() == end)
            {
                return true;
            }
        }

        return false;
    }
}
