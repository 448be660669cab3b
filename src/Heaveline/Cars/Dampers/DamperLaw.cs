namespace Heaveline.Cars;

/// <summary>How a damper's force depends on its velocity.</summary>
public abstract record DamperLaw;
