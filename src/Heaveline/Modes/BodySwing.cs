namespace Heaveline.Modes;

/// <summary>
/// What moves in a body mode seen from the side. One rule: an end swings where it moves at least four times as far as the other end; where both
/// move more alike, the same way is bounce and against each other is pitch. The four is a choice of words, no boundary of physics.
/// </summary>
public enum BodySwing
{
    /// <summary>Both ends move the same way: the centre lies outside the wheelbase, farther than a third of it from either axle.</summary>
    Bounce,

    /// <summary>The ends move against each other: the centre lies inside the wheelbase, farther than a fifth of it from either axle.</summary>
    Pitch,

    /// <summary>The front end moves, about a centre near the rear axle.</summary>
    FrontEnd,

    /// <summary>The rear end moves, about a centre near the front axle.</summary>
    RearEnd,
}
