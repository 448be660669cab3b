using System.Numerics;
using Heaveline.Elements;

namespace Heaveline.Drives.Events;

/// <summary>
/// A car as cars usually are, to see when a bump began before anything is known of this one: the linear half car with four freedoms, per unit of
/// sprung mass.
/// </summary>
/// <param name="Front">Ride frequency of the front with rigid tyres, Hz.</param>
/// <param name="Rear">The same of the rear, Hz.</param>
/// <param name="Damping">Damping ratio of both ends.</param>
internal sealed record UsualCar(double Front, double Rear, double Damping)
{
    // The middles of what cars have: front share, dynamic index, unsprung over sprung mass, hop frequency (Hz), height that gravity acts at (m).
    // 204 measured vehicles give the index; the rest is common practice, no source.
    private const double FrontShare = 0.54;
    private const double Index = 0.98;
    private const double Unsprung = 0.13;
    private const double Hop = 10.8;
    private const double GravityArm = 0.25;

    /// <summary>Cars of all usual frequencies and dampings.</summary>
    public static IReadOnlyList<UsualCar> All { get; } =
    [
        .. from front in new[] { 1.0, 1.25, 1.6 }
           from ratio in new[] { 0.9, 1.05, 1.25 }
           from damping in new[] { 0.18, 0.33 }
           select new UsualCar(front, ratio * front, damping),
    ];

    /// <summary>Where the sprung mass has its centre behind the front axle, over the wheelbase.</summary>
    public static double CentreBehind => 1.0 - FrontShare;

    /// <summary>Vertical acceleration at the phone (m/s²) and pitch rate (rad/s) for a metre of road under one axle.</summary>
    /// <param name="frequency">Hz, above 0.</param>
    /// <param name="wheelbase">Wheelbase, m.</param>
    /// <param name="behind">The phone behind the front axle, m.</param>
    public (Complex FrontVertical, Complex FrontRate, Complex RearVertical, Complex RearRate) At(double frequency, double wheelbase, double behind)
    {
        var s = new Complex(0.0, 2.0 * Math.PI * frequency);
        var (b, c) = ((1.0 - FrontShare) * wheelbase, FrontShare * wheelbase);
        var inertia = Index * b * c;
        var (alphaF, betaF) = Axle(FrontShare, Front, s);
        var (alphaR, betaR) = Axle(1.0 - FrontShare, Rear, s);
        // s²z = ΣF, I·s²θ = −ΣxF with F = αr − β(z − xθ); pitch is nose down, x is forward of the centre.
        var heave = (s * s) + betaF + betaR;
        var cross = (b * betaF) - (c * betaR);
        var pitch = (inertia * s * s) + (b * b * betaF) + (c * c * betaR) - (Gravity.Standard * GravityArm);
        var determinant = (heave * pitch) - (cross * cross);
        var place = b - behind;
        var (frontA, frontQ) = Solved(alphaF, -b * alphaF);
        var (rearA, rearQ) = Solved(alphaR, c * alphaR);
        return (frontA, frontQ, rearA, rearQ);

        (Complex Vertical, Complex Rate) Solved(Complex force, Complex moment)
        {
            var z = ((pitch * force) + (cross * moment)) / determinant;
            var angle = ((cross * force) + (heave * moment)) / determinant;
            return (s * s * (z - (place * angle)), s * angle);
        }
    }

    private (Complex Alpha, Complex Beta) Axle(double share, double frequency, Complex s)
    {
        var omega = 2.0 * Math.PI * frequency;
        var spring = (share * omega * omega) + (2.0 * Damping * share * omega * s);
        var wheel = Unsprung * share * s * s;
        var tyre = Unsprung * share * Math.Pow(2.0 * Math.PI * Hop, 2.0);
        var whole = wheel + spring + tyre;
        return (spring * tyre / whole, spring * (wheel + tyre) / whole);
    }
}
