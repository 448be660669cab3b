namespace Heaveline.Figures.Silhouettes;

/// <summary>An estate: the roof goes on over the luggage.</summary>
internal static class EstateShape
{
    private const double Arch = 1.17;

    /// <summary>The silhouette.</summary>
    public static Silhouette Of(SilhouetteMeasures m)
    {
        var w = Waist.Of(m, 0.63, 0.68, Arch);
        var (l, f, r, h, belt, sill) = (m.Wheelbase, m.Nose, m.Rump, w.Roof, w.Height, m.Sill);
        var cabin = Cabin.Around(
            m.Heads, new(r + 0.08, belt + 0.05), new(r + 0.42, h - 0.06), new(0.62 * l, h - 0.02), new(0.92 * l, belt), r + 0.06, f - 0.30);
        return new Silhouette
        {
            Kind = SilhouetteKind.Estate,
            Measures = m,
            ArchRadius = Arch * m.WheelRadius,
            Outline = BodyShell.Outline(m, Arch,
            [
                new(r + 0.02, sill + 0.24, 0.12), new(r, 0.74 * belt, 0.10),
                SilhouetteCorner.At(cabin.RearBase, 0.14), SilhouetteCorner.At(cabin.RearTop, 0.22), new(cabin.Middle, h + 0.015, 0.60),
                SilhouetteCorner.At(cabin.FrontTop, 0.44), SilhouetteCorner.At(cabin.FrontBase, 0.40),
                new(f - 0.22, w.Front(0.80), 0.40), new(f, w.Front(0.58), 0.20), new(f - 0.03, sill + 0.10, 0.10),
            ]),
            Glass = cabin.Glass(0.10, 0.07, -0.06, 0.40 * l),
            Creases =
            [
                SilhouettePath.Between(0.40 * l, belt - 0.02, 0.40 * l, sill + 0.10),
                SilhouettePath.Between(0.73 * l, belt - 0.06, 0.75 * l, sill + 0.14),
                BodyShell.Fold(new(r + 0.04, 0.86 * belt), new(0.5 * l, 0.87 * belt, 0.9), new(f - 0.3, w.Front(0.73))),
            ],
            Panels = [],
            Tail = new(r + 0.06, 0.92 * belt),
            Nose = new(f, sill + 0.32),
            Rump = new(r, 0.74 * belt),
            FrontTower = BodyShell.FrontTower(m),
            RearTower = BodyShell.RearTower(m),
        };
    }
}
