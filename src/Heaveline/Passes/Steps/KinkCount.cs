namespace Heaveline.Passes.Steps;

/// <summary>How many kinks of each kind follow an axle's block, and whether its wheels sit on one solid axle.</summary>
internal readonly record struct KinkCount(int Dampers, int Above, int Below, bool Solid);
