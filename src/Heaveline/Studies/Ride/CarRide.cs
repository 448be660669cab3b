using Heaveline.Rides;

namespace Heaveline.Studies;

/// <summary>One car's ride.</summary>
/// <param name="Name">What it is called beside the others.</param>
/// <param name="Responses">Its responses at every speed asked for.</param>
/// <param name="InTime">Its passes in time at every speed of the tables; null where none were asked for.</param>
public sealed record CarRide(string Name, IReadOnlyList<RandomResponse> Responses, IReadOnlyList<RandomPass>? InTime);
