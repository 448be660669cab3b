namespace Heaveline.Figures.Silhouettes;

/// <summary>A small open kit car: a screen, a head rest behind the driver, no roof.</summary>
internal static class KitCarShape
{
    private const double Arch = 1.14;

    /// <summary>The silhouette.</summary>
    public static Silhouette Of(SilhouetteMeasures m)
    {
        var w = Waist.Of(m, 0.72, 0.62, Arch);
        var (l, f, r, h, deck, sill) = (m.Wheelbase, m.Nose, m.Rump, w.Roof, w.Height, m.Sill);

        // The cockpit lies under its people; the screen ahead of them, the head rest behind.
        var first = m.Heads.IsEmpty ? 0.38 * l : m.Heads.Max(head => head.X);
        var last = m.Heads.IsEmpty ? 0.38 * l : m.Heads.Min(head => head.X);
        var (rear, front) = (Math.Min(0.20 * l, last - 0.30), Math.Max(0.52 * l, first + 0.30));

        // The bonnet falls to its nose from the scuttle, and no lower than leaves sheet over the arch.
        var scuttle = Math.Max(l - 0.40, front + (0.12 * l));
        var toHub = (l - scuttle) / (f - 0.20 - scuttle);
        var over = ((1.0 + Arch) * m.WheelRadius) + 0.06;
        var bonnet = toHub > 0.0 ? Math.Max(w.Front(0.78), (over - ((1.0 - toHub) * (deck - 0.02))) / toHub) : w.Front(0.78);
        return new Silhouette
        {
            Kind = SilhouetteKind.KitCar,
            Measures = m,
            ArchRadius = Arch * m.WheelRadius,
            Outline = BodyShell.Outline(m, Arch,
            [
                new(r + 0.04, sill + 0.16, 0.14), new(r, 0.66 * deck, 0.20), new(Math.Min(r + 0.32, rear - 0.22), deck, 0.30),
                new(rear - (0.08 * l), deck + 0.10, 0.16), new(rear, deck - 0.05, 0.05), new(front, deck - 0.07, 0.06),
                new(front + (0.04 * l), deck + 0.06, 0.08), new(scuttle, deck - 0.02, 0.60),
                new(f - 0.20, bonnet, 0.36), new(f, w.Front(0.44), 0.16), new(f - 0.04, sill + 0.06, 0.08),
            ]),
            Glass =
            [
                SilhouettePath.Rounded(
                [
                    new(front + (0.035 * l), deck + 0.06, 0.02), new(front - (0.045 * l), h - 0.02, 0.05), new(front - (0.025 * l), h, 0.03),
                    new(front + (0.09 * l), deck + 0.05, 0.02),
                ]),
            ],
            Creases =
            [
                BodyShell.Fold(
                    new(r + 0.06, 0.74 * deck), new(0.3 * l, 0.60 * deck, 0.5), new(0.7 * l, 0.74 * deck, 0.5), new(f - 0.2, w.Front(0.60))),
                SilhouettePath.Between(0.62 * l, 0.78 * deck, 0.58 * l, sill + 0.10),
            ],
            Panels =
            [
                SilhouettePath.Rounded(
                [
                    new(rear - (0.10 * l), deck + 0.07, 0.03), new(rear - (0.115 * l), h - 0.03, 0.08), new(rear - (0.06 * l), h - 0.02, 0.06),
                    new(rear - (0.03 * l), deck + 0.05, 0.02),
                ]),
            ],
            Tail = new(r + 0.07, 0.72 * deck),
            Nose = new(f, sill + 0.22),
            Rump = new(r, 0.66 * deck),
            FrontTower = new(l, Math.Min((2.0 * m.WheelRadius) + 0.14, 0.96 * deck)),
            RearTower = new(0.0, Math.Min((2.0 * m.WheelRadius) + 0.16, 0.98 * deck)),
        };
    }
}
