using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Tests.Twin;

/// <summary>
/// The numbers of one or several ride models as the kernel reads them: per corner a quad, per car a lane. Cars side by side must have the same needs.
/// </summary>
internal sealed class RideConstants<TQuad, TLane>
    where TQuad : struct, IQuad<TQuad, TLane>
    where TLane : struct, ILane<TLane>
{
    public Needs Needs;

    // Body: 1/M, inverse of [I_yy −P; −P I_xx], gravity arms M·g·h, corner places, wheels' inverse masses, own and across a solid axle.
    public TLane PerMass;
    public TLane PitchPerPitch;
    public TLane RollPerRoll;
    public TLane PitchPerRoll;
    public TLane PitchGravity;
    public TLane RollGravity;
    public TQuad X;
    public TQuad Y;
    public TQuad PerWheel;
    public TQuad AcrossAxle;

    // Trim: travel, total suspension force, tyre load.
    public TQuad TrimTravel;
    public TQuad TrimForce;
    /// <summary>−N, the change of load at which a tyre leaves the road.</summary>
    public TQuad TrimUnload;
    public TQuad TrimFlow;

    public TQuad TyreRate;
    public TQuad TyreDamping;

    public TQuad SpringConstant;
    public TQuad SpringSlope;
    public TQuad[] SpringAt = [];
    public TQuad[] SpringBend = [];
    public TQuad GasForce;
    public TQuad GasAreaPerVolume;
    public TQuad GasExponent;
    public TQuad[] SpringRatio = [];
    public TQuad DamperConstant;
    public TQuad DamperSlope;
    public TQuad[] DamperAt = [];
    public TQuad[] DamperBend = [];
    public TQuad[] DamperRatio = [];
    public TQuad DamperGas;
    public TQuad StopConstant;
    public TQuad[] BumpAt = [];
    public TQuad[] BumpBend = [];
    public TQuad[] ReboundAt = [];
    public TQuad[] ReboundBend = [];
    public TQuad[] CurvedBump = [];
    public TQuad[] CurvedRebound = [];
    public TQuad Bar;
    // Rate of friction's spring, and how far it is pressed and drawn when the slider gives way.
    public TQuad FrictionRate;
    public TQuad PreSliding;
    public TQuad PreSlidingBack;
    public TQuad SpringShare;
    public TQuad SpringOther;
    public TQuad DamperShare;
    public TQuad DamperOther;
    public TQuad StopShare;
    public TQuad StopOther;
    public TQuad LinkRatio;
    public TLane LinkRate;
    public TLane LinkDamping;
    public TLane LinkCarried;
    public TQuad LinkGasPressure;
    public TQuad LinkPerVolume;
    public TQuad LinkExponent;
    public TQuad FluidArea;
    public TQuad FluidSign;
    public TQuad FluidPressure;
    public TQuad FluidStiffness;
    public TQuad FluidGasPressure;
    public TQuad FluidPerVolume;
    public TQuad FluidExponent;
    public TQuad PerInertance;
    public TQuad PerResistance;
    public TQuad FluidResistance;
}
