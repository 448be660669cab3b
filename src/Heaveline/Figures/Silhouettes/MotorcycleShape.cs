namespace Heaveline.Figures.Silhouettes;

/// <summary>A motorcycle: tank, seat and engine; the fork's head, the swinging arm's pivot, a small screen over the lamp.</summary>
internal static class MotorcycleShape
{
    /// <summary>The silhouette.</summary>
    public static Silhouette Of(SilhouetteMeasures m)
    {
        // Heights grow with the wheels, lengths with the wheelbase.
        var z = m.WheelRadius / SilhouetteProportion.Of(SilhouetteKind.Motorcycle).WheelRadius;
        var (l, s, sill) = (m.Wheelbase, m.Scale, m.Sill);
        var fork = new ScenePoint(l - (0.36 * s), 0.93 * z);
        SilhouetteCorner At(double x, double height, double radius) => new(x, height * z, radius * s);

        // The fairing stands behind the lamp, wherever that was measured.
        var lamp = m.Lamp;
        SilhouetteCorner Beside(double x, double up, double radius) => new(lamp.X + (x * s), lamp.Z + (up * z), radius * s);
        return new Silhouette
        {
            Kind = SilhouetteKind.Motorcycle,
            Measures = m,
            ArchRadius = 0.0,
            Pivot = new(0.36 * l, 0.38 * z),
            Outline = SilhouettePath.Rounded(
            [
                At(-0.12 * s, 0.86, 0.06), At(0.12 * s, 0.82, 0.10), At(0.34 * l, 0.77, 0.12), At(0.44 * l, 0.93, 0.14), At(0.62 * l, 1.0, 0.14),
                At(fork.X + (0.08 * s), 0.97, 0.06), At(fork.X + (0.10 * s), 0.84, 0.05), At(0.66 * l, 0.70, 0.08), At(0.72 * l, 0.34, 0.09),
                new(0.62 * l, sill + 0.02, 0.09 * s), new(0.40 * l, sill, 0.09 * s), At(0.30 * l, 0.36, 0.08), At(0.30 * l, 0.60, 0.10),
                At(0.0, 0.74, 0.08), At(-0.16 * s, 0.80, 0.05),
            ]),
            Panels = [SilhouettePath.Rounded(
                [Beside(-0.15, 0.18, 0.05), Beside(-0.20, 0.01, 0.04), Beside(0.0, -0.06, 0.06), Beside(0.04, 0.06, 0.06)])],
            Glass = [SilhouettePath.Rounded([Beside(-0.22, 0.32, 0.05), Beside(-0.15, 0.16, 0.02), Beside(-0.03, 0.11, 0.03)])],
            Creases =
            [
                BodyShell.Fold(At(0.34 * l, 0.62, 0.0), At(0.60 * l, 0.66, 0.10), At(0.66 * l, 0.80, 0.0)),
                SilhouettePath.Between(0.36 * l, 0.46 * z, 0.66 * l, 0.42 * z),
            ],
            Tail = new(-0.12 * s, 0.82 * z),
            Nose = new(l + m.WheelRadius, 2.0 * m.WheelRadius),
            Rump = new(-0.16 * s, 0.82 * z),
            FrontTower = fork,
            RearTower = new(0.2 * l, 0.72 * z),
        };
    }
}
