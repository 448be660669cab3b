using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>An anti-roll bar as the car holds it, however it was written: k of F_left = k·(s_left − s_right) at the wheel.</summary>
internal sealed record AntiRollBarRate(Amount<Stiffness> AtWheel);
