namespace Heaveline.Figures.Silhouettes;

/// <summary>A van: a tall box, glass only where its driver sits.</summary>
internal static class VanShape
{
    private const double Arch = 1.15;

    /// <summary>The silhouette.</summary>
    public static Silhouette Of(SilhouetteMeasures m)
    {
        var w = Waist.Of(m, 0.52, 0.66, Arch);
        var (l, f, r, h, belt, sill) = (m.Wheelbase, m.Nose, m.Rump, w.Roof, w.Height, m.Sill);
        var cabin = Cabin.Around(
            m.Heads, new(0.655 * l, belt), new(0.63 * l, 0.80 * h), new(0.78 * l, h - 0.12), new(f - 0.34, belt - 0.03), 0.5 * l, f - 0.14);

        // The pane ends below the roof: as wide there as the screen leaves it.
        var (foot, top) = (belt + 0.02, 0.80 * h);
        double Screen(double z) => Cabin.On(cabin.FrontBase, cabin.FrontTop, z);
        var post = Math.Min(cabin.RearBase.X, cabin.RearTop.X) + 0.09;
        return new Silhouette
        {
            Kind = SilhouetteKind.Van,
            Measures = m,
            ArchRadius = Arch * m.WheelRadius,
            Outline = BodyShell.Outline(m, Arch,
            [
                new(r, sill + 0.20, 0.06), new(r + 0.03, h - 0.08, 0.14), new(r + 0.50, h, 0.40),
                new(Math.Min(0.60 * l, cabin.FrontTop.X - 0.4), h, 0.50),
                SilhouetteCorner.At(cabin.FrontTop, 0.36), SilhouetteCorner.At(cabin.FrontBase, 0.26),
                new(f - 0.06, w.Front(0.76), 0.18), new(f, sill + 0.34, 0.10), new(f - 0.03, sill + 0.10, 0.08),
            ]),
            Glass = [SilhouettePath.Rounded(
                [new(post, foot, 0.07), new(post, top, 0.10), new(Screen(top) - 0.09, top, 0.10), new(Screen(foot) - 0.09, foot, 0.07)])],
            Creases =
            [
                SilhouettePath.Between(post - 0.09, 0.86 * h, post - 0.09, sill + 0.10),
                SilhouettePath.Between(0.33 * l, 0.90 * h, 0.33 * l, sill + 0.10),
                SilhouettePath.Between(post - 0.09, 0.88 * h, r + 0.14, 0.90 * h),
                SilhouettePath.Between(r + 0.14, 0.72 * belt, 0.90 * l, 0.72 * belt),
            ],
            Panels = [],
            Tail = new(r + 0.06, 0.86 * belt),
            Nose = new(f, sill + 0.36),
            Rump = new(r, 0.45 * h),
            FrontTower = BodyShell.FrontTower(m),
            RearTower = new(0.0, (2.0 * m.WheelRadius) + 0.31),
        };
    }
}
