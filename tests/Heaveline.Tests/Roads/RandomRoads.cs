using CsCheck;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Tests.Roads;

/// <summary>Random profiles for property tests: straight pieces, curved pieces and, if wanted, jumps.</summary>
internal static class RandomRoads
{
    internal static Gen<Profile> Smooth { get; } = Pieces(jumps: false);

    internal static Gen<Profile> WithJumps { get; } = Pieces(jumps: true);

    internal static Amount<Length> Metres(double value) => new(value);

    private static Gen<Profile> Pieces(bool jumps) =>
        Gen.Select(
            Gen.Double[-5.0, 5.0],
            Gen.Select(Gen.Double[0.002, 2.0], Gen.Double[-0.2, 0.2], Gen.Int[0, jumps ? 2 : 1]).Array[1, 12],
            (start, pieces) =>
            {
                var outline = new Outline(start, 0.05);
                var (x, height) = (start, 0.05);
                foreach (var (width, next, kind) in pieces)
                {
                    if (kind == 2)
                    {
                        outline.LineTo(x, next);
                    }
                    else if (kind == 1)
                    {
                        var (from, rise, x0, k) = (height, next - height, x, Math.PI / width);
                        outline.CurveTo(
                            x + width,
                            next,
                            s => from + (rise * 0.5 * (1.0 - Math.Cos(k * (s - x0)))),
                            s => rise * 0.5 * k * Math.Sin(k * (s - x0)),
                            0.5 * rise * k * k * k * k);
                        x += width;
                    }
                    else
                    {
                        outline.LineTo(x + width, next);
                        x += width;
                    }

                    height = next;
                }

                return outline.Close();
            });
}
