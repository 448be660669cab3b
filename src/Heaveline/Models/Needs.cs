namespace Heaveline.Models;

/// <summary>Parts of the equations that a car needs beyond springs, dampers, stops and tyres. The kernel leaves the others out.</summary>
[Flags]
internal enum Needs
{
    None = 0,

    /// <summary>Elements not at the wheels.</summary>
    SolidAxle = 1,

    /// <summary>A motion ratio that varies with travel.</summary>
    VaryingRatio = 2,

    /// <summary>A gas spring.</summary>
    Gas = 4,

    /// <summary>A stop with an exponent.</summary>
    CurvedStop = 8,

    Friction = 16,

    ElasticLink = 32,

    FluidLink = 64,

    /// <summary>A gas accumulator in the fluid link.</summary>
    FluidGas = 128,

    /// <summary>A fluid line without inertance: its flow follows the pressures at once.</summary>
    ResistiveLine = 256,
}
