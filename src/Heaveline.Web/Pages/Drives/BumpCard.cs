using Heaveline.Drives.Events;

namespace Heaveline.Web.Pages.Drives;

/// <summary>One bump as a small drawing: how the body moved over it, in units of the drawing.</summary>
/// <param name="Event">The bump.</param>
/// <param name="Curve">The points of the curve, as a polyline takes them.</param>
/// <param name="Onset">Where the front wheels touch it.</param>
/// <param name="HitUntil">Where the hit ends.</param>
/// <param name="SettlingUntil">Where the settling ends.</param>
public sealed record BumpCard(DriveEvent Event, string Curve, double Onset, double HitUntil, double SettlingUntil);
