namespace Heaveline.Figures.Silhouettes;

/// <summary>A hatchback: short behind, its rear window in the lid.</summary>
internal static class HatchbackShape
{
    private const double Arch = 1.17;

    /// <summary>The silhouette.</summary>
    public static Silhouette Of(SilhouetteMeasures m)
    {
        var w = Waist.Of(m, 0.62, 0.64, Arch);
        var (l, f, r, h, belt, sill) = (m.Wheelbase, m.Nose, m.Rump, w.Roof, w.Height, m.Sill);
        var cabin = Cabin.Around(
            m.Heads, new(r + 0.10, belt + 0.05), new(r + 0.40, h - 0.03), new(0.68 * l, h - 0.02), new(l, belt - 0.01), r + 0.06, f - 0.28);
        return new Silhouette
        {
            Kind = SilhouetteKind.Hatchback,
            Measures = m,
            ArchRadius = Arch * m.WheelRadius,
            Outline = BodyShell.Outline(m, Arch,
            [
                new(r, sill + 0.30, 0.14), new(r, 0.72 * belt, 0.08),
                SilhouetteCorner.At(cabin.RearBase, 0.16), SilhouetteCorner.At(cabin.RearTop, 0.26), new(cabin.Middle, h + 0.015, 0.50),
                SilhouetteCorner.At(cabin.FrontTop, 0.34), SilhouetteCorner.At(cabin.FrontBase, 0.30),
                new(f - 0.20, w.Front(0.79), 0.30), new(f, w.Front(0.55), 0.20), new(f - 0.02, sill + 0.12, 0.10),
            ]),
            Glass = cabin.Glass(0.10, 0.07, 0.16 * l, (0.60 * l) - 0.10),
            Creases =
            [
                SilhouettePath.Between(0.5 * l, belt - 0.04, 0.5 * l, sill + 0.10),
                BodyShell.Fold(new(r + 0.06, 0.86 * belt), new(0.5 * l, 0.83 * belt, 0.5), new(f - 0.4, w.Front(0.74))),
            ],
            Panels = [],
            Tail = new(r + 0.05, 0.82 * belt),
            Nose = new(f, sill + 0.33),
            Rump = new(r, 0.72 * belt),
            FrontTower = BodyShell.FrontTower(m),
            RearTower = BodyShell.RearTower(m),
        };
    }
}
