namespace Heaveline.Figures.Silhouettes;

/// <summary>A pick-up: a cab, and a bed without a roof.</summary>
internal static class PickUpShape
{
    private const double Arch = 1.19;

    /// <summary>The silhouette.</summary>
    public static Silhouette Of(SilhouetteMeasures m)
    {
        var w = Waist.Of(m, 0.625, 0.80, Arch);
        var (l, f, r, h, belt, sill) = (m.Wheelbase, m.Nose, m.Rump, w.Roof, w.Height, m.Sill);
        var cabin = Cabin.Around(
            m.Heads, new(0.26 * l, belt + 0.02), new(0.32 * l, h - 0.05), new(0.64 * l, h - 0.02), new(0.87 * l, belt + 0.03), r + 0.20, f - 0.25);
        var wall = cabin.RearBase.X;
        return new Silhouette
        {
            Kind = SilhouetteKind.PickUp,
            Measures = m,
            ArchRadius = Arch * m.WheelRadius,
            Outline = BodyShell.Outline(m, Arch,
            [
                new(r + 0.02, sill + 0.22, 0.06), new(r, belt - 0.06, 0.05), new(wall - 0.05, belt - 0.03, 0.03),
                SilhouetteCorner.At(cabin.RearTop, 0.14), new(cabin.Middle, h + 0.015, 0.40),
                SilhouetteCorner.At(cabin.FrontTop, 0.34), SilhouetteCorner.At(cabin.FrontBase, 0.26),
                new(f - 0.14, w.Front(0.93), 0.24), new(f, w.Front(0.68), 0.12), new(f - 0.03, sill + 0.10, 0.08),
            ]),
            Glass = cabin.Glass(0.10, 0.06, 0.475 * l),
            Creases =
            [
                SilhouettePath.Between(0.475 * l, belt, 0.475 * l, sill + 0.10),
                SilhouettePath.Between(wall - 0.02, belt - 0.06, wall - 0.02, sill + 0.06),
                SilhouettePath.Between(r + 0.05, 0.86 * belt, wall - 0.03, 0.86 * belt),
                SilhouettePath.Between(wall + 0.03, 0.84 * belt, f - 0.30, w.Front(0.80)),
            ],
            Panels = [],
            Tail = new(r + 0.05, 0.82 * belt),
            Nose = new(f, sill + 0.38),
            Rump = new(r, belt - 0.10),
            FrontTower = BodyShell.FrontTower(m),
            RearTower = BodyShell.RearTower(m),
        };
    }
}
