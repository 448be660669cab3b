namespace Heaveline.Figures.Silhouettes;

/// <summary>An off-roader: upright, its spare wheel on the tailgate.</summary>
internal static class OffRoaderShape
{
    private const double Arch = 1.20;

    /// <summary>The silhouette.</summary>
    public static Silhouette Of(SilhouetteMeasures m)
    {
        var w = Waist.Of(m, 0.63, 0.80, Arch);
        var (l, f, r, h, belt, sill) = (m.Wheelbase, m.Nose, m.Rump, w.Roof, w.Height, m.Sill);
        var cabin = Cabin.Around(
            m.Heads, new(r + 0.05, belt + 0.02), new(r + 0.14, h - 0.04), new(0.66 * l, h - 0.02), new(0.79 * l, belt + 0.02), r + 0.03, f - 0.25);
        return new Silhouette
        {
            Kind = SilhouetteKind.OffRoader,
            Measures = m,
            ArchRadius = Arch * m.WheelRadius,
            Outline = BodyShell.Outline(m, Arch,
            [
                new(r, sill + 0.10, 0.06), new(r, 0.90 * belt, 0.06),
                SilhouetteCorner.At(cabin.RearBase, 0.06), SilhouetteCorner.At(cabin.RearTop, 0.12), new(cabin.Middle, h, 0.30),
                SilhouetteCorner.At(cabin.FrontTop, 0.10), SilhouetteCorner.At(cabin.FrontBase, 0.07),
                new(f - 0.06, w.Front(0.965), 0.14), new(f, w.Front(0.72), 0.08), new(f, sill + 0.10, 0.06),
            ]),
            Glass = cabin.Glass(0.09, 0.05, 0.10 * l, 0.44 * l),
            Creases =
            [
                SilhouettePath.Between(0.44 * l, belt, 0.44 * l, sill + 0.08),
                SilhouettePath.Between(0.77 * l, belt - 0.02, 0.77 * l, sill + 0.20),
                SilhouettePath.Between(r + 0.05, 0.84 * belt, f - 0.14, w.Front(0.82)),
            ],
            Panels =
            [
                SilhouettePath.Rounded(
                    [
                        new(r - 0.19, 0.54 * belt, 0.06), new(
                            r - 0.19, 1.06 * belt, 0.06), new(r - 0.01, 1.06 * belt, 0.03), new(r - 0.01, 0.54 * belt, 0.03),
                    ]),
            ],
            Tail = new(r + 0.05, 0.76 * belt),
            Nose = new(f, sill + 0.34),
            Rump = new(r, 0.80 * belt),
            FrontTower = new(l, (2.0 * m.WheelRadius) + 0.27),
            RearTower = new(0.0, (2.0 * m.WheelRadius) + 0.25),
        };
    }
}
