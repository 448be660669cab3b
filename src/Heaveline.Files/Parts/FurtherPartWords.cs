using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Files.Parts;

/// <summary>The words for bars, stops, tyres and links that can be bought.</summary>
internal static class FurtherPartWords
{
    private static readonly Key<Amount<Stiffness>> WheelRate = Key.Required(
        "wheel-rate", "Force at one wheel when it alone moves against the other, divided by that movement.", Kind.Amount<Stiffness>(), "9 N/mm")
        .Usually("0 N/mm", "150 N/mm");

    private static readonly Key<string> HoleName = Key.Required("hole", "Which hole.", Kind.Text(), "inner", property: "Name");

    private static readonly Shape<BarHole> Hole = new Shape("hole of a bar", "One of the holes for the bar's links.", HoleName, WheelRate)
        .As(f => new BarHole(f.Required(HoleName), f.Required(WheelRate)));

    /// <summary>The holes.</summary>
    public static readonly Key<IReadOnlyList<BarHole>> Holes = Key.Required(
        "holes",
        "Its holes, with the rate at the wheel in each; one for a bar that cannot be set.",
        Kind.List(Hole),
        "[{hole: inner, wheel-rate: 11 N/mm}]");

    /// <summary>A bar.</summary>
    public static readonly Shape<BarPart> Bar = new Shape("bar to buy", "An anti-roll bar.", [.. PartWords.All, Holes]).As(f =>
    {
        var holes = f.Required(Holes);
        if (holes.GroupBy(hole => hole.Name, StringComparer.Ordinal).FirstOrDefault(same => same.Count() > 1) is { } twice)
        {
            f.Refuse(Holes, $"names {twice.Key} twice; each hole must have its own name.", "Name them inner, middle and outer.");
            return null;
        }

        return PartWords.With(new BarPart { Name = "bar", Holes = [.. holes] }, f);
    });

    private static readonly Key<ForceTable> Curve = Key.Required(
        "curve",
        "Rows [how far it is pressed, force] at the stop itself; zero need not be written.",
        new ForceTableKind<Length>(throughZero: true, ("0 mm", "250 mm"), ("0 N", "100000 N")),
        "[[10 mm, 300 N], [25 mm, 1500 N]]");

    private static readonly Key<Amount<Plain>> CurveDoubt = TableDoubt.KeyFor("the curve");

    private static readonly Key<Amount<Length>> StopLength = Key.Required(
        "length", "Length of the stop without load.", Kind.Amount<Length>(), "45 mm ± 1 mm")
        .Usually("10 mm", "200 mm");

    private static readonly Key<Amount<Length>> SolidAfter = Key.Optional(
        "solid-after", "How far it is pressed, at itself, where metal meets metal; no such end when left out.", Kind.Amount<Length>(), "34 mm")
        .Usually("1 mm", "200 mm");

    private static readonly Key<Amount<Plain>> PerWheel = Key.Optional(
        "stop-per-wheel",
        "Travel at the stop divided by wheel travel; that of the damper, on whose rod it sits, when left out.",
        Kind.Amount<Plain>(),
        "0.95",
        property: "PerWheel")
        .Usually("0.1", "1.3");

    private static readonly Key<IReadOnlyList<Amount<Length>>> Cuts = Key.Optional(
        "cut",
        "How much may be cut off, 0 mm for the whole stop; it stays whole when left out.",
        Kind.List(Kind.Amount<Length>()),
        "[0 mm, 10 mm]",
        property: "Cuts");

    /// <summary>A bump stop.</summary>
    public static readonly Shape<StopPart> Stop = new Shape(
        "bump stop to buy",
        "A bump stop, described at itself. Cut, it is taken to be of one section: what is left gives way less by the same share.",
        [.. PartWords.All, StopLength, Curve, CurveDoubt, SolidAfter, PerWheel, Cuts])
        .As(MakeStop);

    private static readonly Key<Amount<Mass>> MassChange = Key.Optional(
        "mass-change",
        "How much heavier one is than the tyre that is there, rim included where it changes too; lighter is negative.",
        Kind.Amount<Mass>(),
        "1.2 kg",
        property: "Unsprung")
        .Usually("-20 kg", "20 kg");

    private static readonly Key<Amount<Length>> RadiusChange = Key.Optional(
        "radius-change",
        "How much larger its free radius is than that of the tyre that is there; smaller is negative.",
        Kind.Amount<Length>(),
        "4 mm")
        .Usually("-60 mm", "60 mm");

    /// <summary>A tyre.</summary>
    public static readonly Shape<TyrePart> Tyre = new Shape(
        "tyre to buy",
        "A tyre.",
        [.. PartWords.All, AxlePartWords.TyreRate, AxlePartWords.Damping, AxlePartWords.Contact, MassChange, RadiusChange])
        .As(f => PartWords.With(
            new TyrePart
            {
                Name = "tyre",
                Tyre = new Tyre
                {
                    Rate = f.Required(AxlePartWords.TyreRate),
                    Damping = f.Optional(AxlePartWords.Damping, default),
                    ContactLength = f.Optional(AxlePartWords.Contact, default),
                },
                Unsprung = f.Optional(MassChange, default),
                RadiusChange = f.OptionalValue(RadiusChange),
            },
            f));

    /// <summary>A link.</summary>
    public static readonly Shape<LinkPart> Link = new Shape(
        "link to buy",
        "A common spring or damper, or both, for each side, set free of load with the car standing as it was weighed. The price is that of both "
            + "sides.",
        [
            PartWords.Name, PartWords.Price, PartWords.Stock, PartWords.Maker, PartWords.Pieces, PartWords.Labour,
            InterconnectionWords.Rate, InterconnectionWords.Damping, InterconnectionWords.FrontRatio, InterconnectionWords.RearRatio,
        ])
        .As(f => InterconnectionWords.MakeElastic(f, default) is { } link ? PartWords.With(new LinkPart { Name = "link", Link = link }, f) : null);

    private static StopPart? MakeStop(Fields f)
    {
        var (length, cuts) = (f.Required(StopLength), f.Optional(Cuts) ?? []);
        if (cuts.Any(cut => !(cut.Si >= 0.0 && cut.Si < length.Si)))
        {
            f.Refuse(Cuts, "must be 0 mm or above and less than the stop is long.", "Leave some of the stop.");
            return null;
        }

        return PartWords.With(
            new StopPart
            {
                Name = "stop",
                Length = length,
                Curve = f.Required(Curve).Under(TableDoubt.Factor(f, CurveDoubt, rig: null)),
                SolidAfter = f.OptionalValue(SolidAfter),
                PerWheel = f.OptionalValue(PerWheel),
                Cuts = cuts,
            },
            f);
    }
}
