namespace Heaveline.Modes;

/// <summary>A plain motion of which modes are made up.</summary>
public enum Motion
{
    /// <summary>The body up and down.</summary>
    Heave,

    /// <summary>The body about its cross axis.</summary>
    Pitch,

    /// <summary>The body about its long axis.</summary>
    Roll,

    /// <summary>Both front wheels together.</summary>
    FrontHop,

    /// <summary>The front wheels against each other.</summary>
    FrontTramp,

    /// <summary>Both rear wheels together.</summary>
    RearHop,

    /// <summary>The rear wheels against each other.</summary>
    RearTramp,

    /// <summary>The fluid in both lines the same way.</summary>
    Flow,

    /// <summary>The fluid in the two lines opposite ways.</summary>
    CrossFlow,
}
