namespace Heaveline.Models;

/// <summary>What the kernel reckons with in an element of a kind. What an element has beyond that is refused by name.</summary>
[Flags]
internal enum KernelRoom
{
    None = 0,

    /// <summary>A force whatever the travel.</summary>
    Constant = 1,

    /// <summary>A straight line over travel.</summary>
    Slope = 2,

    /// <summary>Hinges that count above their place.</summary>
    Opening = 4,

    /// <summary>Hinges that count below theirs.</summary>
    Closing = 8,

    Gas = 16,

    /// <summary>Powers of the travel past a clearance towards bump.</summary>
    BumpPower = 32,

    /// <summary>The same towards rebound.</summary>
    ReboundPower = 64,

    /// <summary>A force in proportion to velocity.</summary>
    Damping = 128,

    /// <summary>Hinges over velocity that count above their place.</summary>
    DampingHinges = 256,

    /// <summary>A motion ratio that varies with travel.</summary>
    VaryingRatio = 512,

    Friction = 1024,

    /// <summary>A force whatever the velocity, among laws of velocity.</summary>
    DampingConstant = 2048,

    /// <summary>A motion ratio other than 1.</summary>
    Ratio = 4096,

    /// <summary>A spring of a corner.</summary>
    Spring = Constant | Slope | Opening | Gas | Ratio | VaryingRatio,

    /// <summary>A damper with its gas.</summary>
    Damper = Constant | Damping | DampingConstant | DampingHinges | Ratio | VaryingRatio,

    BumpStop = Constant | Slope | Opening | BumpPower,

    ReboundStop = Constant | Slope | Closing | ReboundPower,

    /// <summary>A common spring, or a volume of fluid.</summary>
    Volume = Constant | Slope | Gas,
}
