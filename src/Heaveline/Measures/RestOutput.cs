using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;

namespace Heaveline.Measures;

/// <summary>What is said of a car at rest: standing, axle by axle, and of its body. To be followed through its doubts.</summary>
public static class RestOutput
{
    /// <summary>Mass on the wheels, kg.</summary>
    public static StaticOutput Mass { get; } = Of("mass", "kg", m => m.Trim.WheelLoad.Sum() / Gravity.Standard);

    /// <summary>Sprung mass, kg.</summary>
    public static StaticOutput SprungMass { get; } = Of("sprung mass", "kg", m => m.Body.Mass);

    /// <summary>The sprung mass's centre behind the front axle, m.</summary>
    public static StaticOutput Centre { get; } = Of("centre of the sprung mass behind the front axle", "m", m => m.Body.BehindFrontAxle);

    /// <summary>Nose-up attitude from the reference state, rad.</summary>
    public static StaticOutput NoseUp { get; } = Of("nose-up attitude", "rad", m => -m.Trim.Pitch);

    /// <summary>Lean to the right, rad.</summary>
    public static StaticOutput Lean { get; } = Of("lean to the right", "rad", m => m.Trim.Roll);

    /// <summary>Height left open by friction at the front, m.</summary>
    public static StaticOutput FrictionBand { get; } = Of("height left open by friction, front", "m", m => m.Trim.FrictionBand[0]);

    /// <summary>Pressure of the fluid line of the left side, Pa; none without a line.</summary>
    public static StaticOutput LinePressure { get; } = Of("line pressure", "Pa", m => m.Trim.LinePressure.Count > 0 ? m.Trim.LinePressure[0] : double.NaN);

    /// <summary>Drop of the dipped beam (–); none without a lamp.</summary>
    public static StaticOutput LampDrop { get; } = Of("dipped beam drop", "", m => HeadlampMeasures.DropAtTrim(m) ?? double.NaN);

    /// <summary>Where the bounce mode's node lies behind the front axle, m.</summary>
    public static StaticOutput BounceCentre { get; } = new("centre of bounce behind the front axle", "m", c => c.Modes.Bounce.NodeBehindFrontAxle);

    /// <summary>Where the pitch mode's node lies behind the front axle, m.</summary>
    public static StaticOutput PitchCentre { get; } = new("centre of pitch behind the front axle", "m", c => c.Modes.Pitch.NodeBehindFrontAxle);

    /// <summary>Roll frequency, Hz; none for a two-wheeler.</summary>
    public static StaticOutput RollFrequency { get; } = new("roll frequency", "Hz", c => c.Modes.Roll?.Frequency ?? double.NaN);

    /// <summary>Roll rate of springs and bars, N m/rad; none for a two-wheeler.</summary>
    public static StaticOutput RollRate { get; } = new("roll rate of springs and bars", "N m/rad", c => c.Modes.Roll?.Stiffness ?? double.NaN);

    /// <summary>Front axle's share of it (–).</summary>
    public static StaticOutput RollFrontShare { get; } = new("front share of the roll rate", "", c => c.Modes.Roll?.FrontShare ?? double.NaN);

    /// <summary>Speed at which the rear catches up with the front, m/s; none when it never does.</summary>
    public static StaticOutput SuitedSpeed { get; } = Of("speed this ratio suits", "m/s", m => Coincidence.Of(m).SuitedSpeed ?? double.NaN);

    /// <summary>Load of an axle on the ground, N.</summary>
    public static StaticOutput Load(AxleEnd end) => end == AxleEnd.Front ? StaticOutput.FrontLoad : StaticOutput.RearLoad;

    /// <summary>Change of the body's height over an axle from the reference state, m.</summary>
    public static StaticOutput Height(AxleEnd end) => Of($"{Word(end)} height, change", "m", m => end == AxleEnd.Front ? m.Trim.FrontHeight : m.Trim.RearHeight);

    /// <summary>Bump travel left at an axle's nearer wheel, m; infinite without a stop.</summary>
    public static StaticOutput BumpLeft(AxleEnd end) => Of($"{Word(end)} travel left to the bump stop", "m", m => Math.Min(m.Trim.BumpLeft[2 * (int)end], m.Trim.BumpLeft[(2 * (int)end) + 1]));

    /// <summary>Droop left at an axle's nearer wheel, m; infinite without a stop.</summary>
    public static StaticOutput DroopLeft(AxleEnd end) => Of($"{Word(end)} droop left to the rebound stop", "m", m => Math.Min(m.Trim.ReboundLeft[2 * (int)end], m.Trim.ReboundLeft[(2 * (int)end) + 1]));

    /// <summary>Wheel rate of springs and links, each wheel, N/m.</summary>
    public static StaticOutput WheelRate(AxleEnd end) => Of(end, "wheel rate, each", "N/m", a => a.Rates.WheelRate);

    /// <summary>Ride frequency with the tyres, Hz.</summary>
    public static StaticOutput Frequency(AxleEnd end) => Of(end, "ride frequency", "Hz", a => a.Rates.Frequency);

    /// <summary>Ride frequency on rigid tyres, Hz.</summary>
    public static StaticOutput FrequencyOnRigidTyres(AxleEnd end) => Of(end, "ride frequency on rigid tyres", "Hz", a => a.Rates.FrequencyOnRigidTyres);

    /// <summary>Ride frequency with the fluid line at one pressure, Hz; none without a pipe.</summary>
    public static StaticOutput SlowFrequency(AxleEnd end) => Of(end, "ride frequency, line at one pressure", "Hz", a => a.RatesAtRest?.Frequency);

    /// <summary>Effective static deflection, m.</summary>
    public static StaticOutput Deflection(AxleEnd end) => Of(end, "effective static deflection", "m", a => a.Rates.Deflection);

    /// <summary>Damping ratio, mean at zero speed (–).</summary>
    public static StaticOutput Damping(AxleEnd end) => Of(end, "damping ratio, mean at zero speed", "", a => a.Damping.Ratio);

    /// <summary>Damping ratio in bump (–).</summary>
    public static StaticOutput BumpDamping(AxleEnd end) => Of(end, "damping ratio, bump", "", a => a.Damping.BumpRatio);

    /// <summary>Damping ratio in rebound (–).</summary>
    public static StaticOutput ReboundDamping(AxleEnd end) => Of(end, "damping ratio, rebound", "", a => a.Damping.ReboundRatio);

    /// <summary>Wheel hop, Hz.</summary>
    public static StaticOutput Hop(AxleEnd end) => Of(end, "wheel hop", "Hz", a => a.Rates.HopFrequency);

    private static StaticOutput Of(string name, string symbol, Func<RideModel, double> of) => new(name, symbol, c => of(c.Model));

    private static StaticOutput Of(AxleEnd end, string what, string symbol, Func<AxleRide, double?> of) => new($"{Word(end)} {what}", symbol, c => of(c.Axle(end)) ?? double.NaN);

    private static string Word(AxleEnd end) => end == AxleEnd.Front ? "front" : "rear";
}
