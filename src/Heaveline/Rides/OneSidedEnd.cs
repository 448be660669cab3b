using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Rides;

/// <summary>One axle of a car whose sides differ, by half the sum and half the difference of its sides, at several frequencies side by side.</summary>
internal struct OneSidedEnd<T>
    where T : unmanaged, ILane<T>
{
    private readonly T rate;
    private readonly T damping;
    private readonly T rollRate;
    private readonly T rollDamping;
    private readonly T rateApart;
    private readonly T dampingApart;
    private readonly T hop;
    private readonly T tramp;
    private readonly T tyreRate;
    private readonly T tyreDamping;
    private LaneComplex<T> tyre;
    private LaneComplex<T> together;
    private LaneComplex<T> against;
    private LaneComplex<T> togetherByAgainst;
    private LaneComplex<T> againstByTogether;

    /// <param name="mean">Mean of both sides.</param>
    /// <param name="apart">What they differ by.</param>
    /// <param name="unit">What stiffnesses and masses are counted in, one over it.</param>
    /// <param name="left">Centre of gravity left of the middle, m.</param>
    public OneSidedEnd(in SymmetricAxle mean, OneSidedAxle apart, double unit, double left)
    {
        (rate, damping) = (T.Of(unit * mean.Rate), T.Of(unit * mean.Damping));
        (rollRate, rollDamping) = (T.Of(unit * mean.RollRate), T.Of(unit * mean.RollDamping));
        (rateApart, dampingApart) = (T.Of(unit * apart.Rate), T.Of(unit * apart.Damping));
        (hop, tramp) = (T.Of(unit * mean.HopMass), T.Of(unit * mean.TrampMass));
        (tyreRate, tyreDamping) = (T.Of(unit * mean.TyreRate), T.Of(unit * mean.TyreDamping));
        (Ahead, Aside, Right) = (T.Of(mean.X), T.Of(mean.Y), T.Of(-left));
    }

    /// <summary>x of the axle.</summary>
    public T Ahead { get; }

    /// <summary>Half its track.</summary>
    public T Aside { get; }

    /// <summary>y of its middle: the centre of gravity is not over it.</summary>
    public T Right { get; }

    /// <summary>Force on the body per its height, both sides together: Z·D⁻¹·W.</summary>
    public LaneComplex<T> Together { get; private set; }

    /// <summary>Together per sides against each other, and the other way round.</summary>
    public LaneComplex<T> Mixed { get; private set; }

    /// <summary>Sides against each other.</summary>
    public LaneComplex<T> Against { get; private set; }

    /// <summary>Takes the wheels out of the equations.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public void Meet(T omega, T square)
    {
        var road = new LaneComplex<T>(tyreRate, omega * tyreDamping);
        var (zs, zd) = (new LaneComplex<T>(rate, omega * damping), new LaneComplex<T>(rollRate, omega * rollDamping));
        var e = new LaneComplex<T>(rateApart, omega * dampingApart);
        var (ws, wd) = (
            new LaneComplex<T>(T.Fma(-square, hop, tyreRate), road.Imaginary), new LaneComplex<T>(T.Fma(-square, tramp, tyreRate), road.Imaginary));
        var (ds, dd, ee) = (zs + ws, zd + wd, e * e);
        var inverse = ((ds * dd) - ee).Inverse;
        e *= inverse;
        together = ((zs * dd) - ee) * inverse;
        against = ((zd * ds) - ee) * inverse;
        togetherByAgainst = e * ws;
        againstByTogether = e * wd;
        tyre = road;
        Together = together * ws;
        Mixed = togetherByAgainst * wd;
        Against = against * wd;
    }

    /// <summary>What a wave under both sides together, and one under the sides against each other, do to the asked signal.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public readonly void Answer(
        in LaneComplex<T> heave, in LaneComplex<T> pitch, in LaneComplex<T> roll, out LaneComplex<T> sum, out LaneComplex<T> difference)
    {
        var middle = LaneComplex<T>.Fma(Right, roll, LaneComplex<T>.Fma(-Ahead, pitch, heave)) * tyre;
        var side = Aside * (roll * tyre);
        sum = LaneComplex<T>.Fma(middle, together, side * againstByTogether);
        difference = LaneComplex<T>.Fma(middle, togetherByAgainst, side * against);
    }
}
