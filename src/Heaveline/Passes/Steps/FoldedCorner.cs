using Heaveline.Models;

namespace Heaveline.Passes.Steps;

/// <summary>
/// The numbers of one wheel's plain elements with motion ratios and trim folded in: as functions of wheel travel s from trim, in place of whole
/// travel S = s + S_trim through a ratio r. r·f(r·S) with a kink at x is a kink at x/r − S_trim with r² times the bend.
/// </summary>
internal readonly struct FoldedCorner
{
    // Sides whose trim differs by no more than rounding count as alike, m and of the load.
    private const double Same = 1e-12;

    private readonly RideNumbers n;
    private readonly CornerLaws laws;
    private readonly int i;

    public FoldedCorner(RideNumbers n, int i)
    {
        (this.n, this.i) = (n, i);
        laws = n.Laws;
        Trim = Even(n.TrimTravel[i], n.TrimTravel[i ^ 1], Same);
    }

    /// <summary>Wheel travel at trim, m.</summary>
    public double Trim { get; }

    public double Unload => -Even(n.TrimLoad[i], n.TrimLoad[i ^ 1], Same * Math.Abs(n.TrimLoad[i]));

    public double SpringRatio => laws.SpringRatio[0][i];

    public double DamperRatio => laws.DamperRatio[0][i];

    /// <summary>Rate of spring and bar by the wheel's own travel, N/m; of the bar alone where the spring is worked out apart.</summary>
    public double Rate(bool shaped) => laws.Bar[i] + (shaped ? 0.0 : laws.SpringSlope[i] * SpringRatio * SpringRatio);

    public double Cross => -laws.Bar[i];

    public double Damping(bool shaped) => shaped ? 0.0 : laws.DamperSlope[i] * DamperRatio * DamperRatio;

    /// <summary>What is left of all forces at s = 0 beside the terms in s: with the kinks' own share they cancel, the car stands.</summary>
    public double Constant(bool shaped)
    {
        var other = Even(n.TrimTravel[i ^ 1], n.TrimTravel[i], Same);
        var sum = (laws.Bar[i] * (Trim - other)) - n.TrimForce[i];
        if (shaped)
        {
            return sum;
        }

        var (r, d) = (SpringRatio, DamperRatio);
        sum += (r * (laws.SpringConstant[i] + (laws.SpringSlope[i] * r * Trim))) + (d * (laws.DamperConstant[i] + laws.DamperGas[i]));
        sum += laws.StopConstant[i] + (Trim * ((r * r * Bends(laws.SpringHinges)) + Bends(laws.BumpHinges) + Bends(laws.ReboundHinges)));
        return sum;
    }

    public (double At, double Bend) Spring(int j) => Kink(laws.SpringHinges, j, SpringRatio, Trim);

    public (double At, double Bend) Damper(int j) => Kink(laws.DamperHinges, j, DamperRatio, 0.0);

    public (double At, double Bend) Bump(int j) => Kink(laws.BumpHinges, j, 1.0, Trim);

    public (double At, double Bend) Rebound(int j) => Kink(laws.ReboundHinges, j, 1.0, Trim);

    /// <summary>Whether one number does for left and right, of everything but the dampers.</summary>
    public static bool SidesAlike(RideNumbers n, bool shaped)
    {
        var laws = n.Laws;
        for (var i = 0; i < 4; i += 2)
        {
            var (a, b) = (new FoldedCorner(n, i), new FoldedCorner(n, i + 1));
            if (a.Rate(shaped) != b.Rate(shaped) || a.Cross != b.Cross || a.Damping(shaped) != b.Damping(shaped) || a.Unload != b.Unload
                || n.TyreRate[i] != n.TyreRate[i + 1] || n.TyreDamping[i] != n.TyreDamping[i + 1]
                || n.PerWheel[i] != n.PerWheel[i + 1] || n.AcrossAxle[i] != n.AcrossAxle[i + 1])
            {
                return false;
            }

            if (!shaped
                && ((laws.SpringHinges.Count + laws.BumpHinges.Count + laws.ReboundHinges.Count > 0 && a.Trim != b.Trim)
                    || a.SpringRatio != b.SpringRatio
                    || !Alike(laws.SpringHinges, i) || !Alike(laws.BumpHinges, i) || !Alike(laws.ReboundHinges, i)))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Whether left and right have the same dampers.</summary>
    public static bool DampersAlike(RideNumbers n)
    {
        var ratio = n.Laws.DamperRatio[0];
        return ratio[0] == ratio[1] && ratio[2] == ratio[3] && Alike(n.Laws.DamperHinges, 0) && Alike(n.Laws.DamperHinges, 2);
    }

    private (double At, double Bend) Kink(Hinges hinges, int j, double ratio, double trim) => j < hinges.Count
        ? ((hinges.At[j][i] / ratio) - trim, hinges.Bend[j][i] * ratio * ratio)
        : (0.0, 0.0);

    private double Bends(Hinges hinges)
    {
        var sum = 0.0;
        for (var j = 0; j < hinges.Count; j++)
        {
            sum += hinges.Bend[j][i];
        }

        return sum;
    }

    private static bool Alike(Hinges hinges, int i)
    {
        for (var j = 0; j < hinges.Count; j++)
        {
            if (hinges.At[j][i] != hinges.At[j][i + 1] || hinges.Bend[j][i] != hinges.Bend[j][i + 1])
            {
                return false;
            }
        }

        return true;
    }

    private static double Even(double own, double other, double same) => Math.Abs(own - other) <= same ? 0.5 * (own + other) : own;
}
