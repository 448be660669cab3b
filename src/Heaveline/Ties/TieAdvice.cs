using Heaveline.Cars;

namespace Heaveline.Ties;

/// <summary>The one pass more that would tell most of what the readings leave open.</summary>
/// <param name="Speed">Its speed over the same obstacle, m/s.</param>
/// <param name="Number">What it would tell most about.</param>
/// <param name="End">Of which axle.</param>
/// <param name="Learned">How much of its doubt would then be gone (–), as <see cref="TieEstimate.Learned"/>.</param>
public sealed record TieAdvice(double Speed, TieNumber Number, AxleEnd End, double Learned)
{
    /// <summary>How far a wheel goes beyond the contact with a stop in it, m.</summary>
    public double IntoStop { get; init; }
}
