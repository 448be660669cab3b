namespace Heaveline.Figures.Silhouettes;

/// <summary>A saloon: bonnet, cabin and a lid over the luggage.</summary>
internal static class SaloonShape
{
    private const double Arch = 1.17;

    /// <summary>The silhouette.</summary>
    public static Silhouette Of(SilhouetteMeasures m)
    {
        var w = Waist.Of(m, 0.64, 0.68, Arch);
        var (l, f, r, h, belt, sill) = (m.Wheelbase, m.Nose, m.Rump, w.Roof, w.Height, m.Sill);
        var cabin = Cabin.Around(
            m.Heads, new(r + 0.62, belt + 0.06), new(0.20 * l, h - 0.045), new(0.60 * l, h - 0.02), new(0.90 * l, belt), r + 0.16, f - 0.30);
        return new Silhouette
        {
            Kind = SilhouetteKind.Saloon,
            Measures = m,
            ArchRadius = Arch * m.WheelRadius,
            Outline = BodyShell.Outline(m, Arch,
            [
                new(r + 0.02, sill + 0.24, 0.12), new(r, 0.80 * belt, 0.10), new(r + 0.10, belt + 0.02, 0.10),
                SilhouetteCorner.At(cabin.RearBase, 0.34), SilhouetteCorner.At(cabin.RearTop, 0.50), new(cabin.Middle, h + 0.02, 0.50),
                SilhouetteCorner.At(cabin.FrontTop, 0.44), SilhouetteCorner.At(cabin.FrontBase, 0.40),
                new(f - 0.22, w.Front(0.80), 0.40), new(f, w.Front(0.58), 0.20), new(f - 0.03, sill + 0.10, 0.10),
            ]),
            Glass = cabin.Glass(0.11, 0.07, 0.08 * l, 0.40 * l),
            Creases =
            [
                SilhouettePath.Between(0.40 * l, belt - 0.02, 0.40 * l, sill + 0.10),
                SilhouettePath.Between(0.73 * l, belt - 0.06, 0.75 * l, sill + 0.14),
                BodyShell.Fold(new(r + 0.04, 0.86 * belt), new(0.5 * l, 0.87 * belt, 0.9), new(f - 0.3, w.Front(0.73))),
            ],
            Panels = [],
            Tail = new(r + 0.07, 0.84 * belt),
            Nose = new(f, sill + 0.32),
            Rump = new(r, 0.80 * belt),
            FrontTower = BodyShell.FrontTower(m),
            RearTower = BodyShell.RearTower(m),
        };
    }
}
