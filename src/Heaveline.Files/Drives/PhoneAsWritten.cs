using Heaveline.Quantities;

namespace Heaveline.Files.Drives;

/// <summary>Where the phone lay in the car, as a person measured it.</summary>
/// <param name="BehindFrontAxle">Behind the front axle, with its doubt; ahead of it is negative.</param>
/// <param name="Left">Left of the car's middle; negative to the right.</param>
/// <param name="Up">Above the floor.</param>
public sealed record PhoneAsWritten(Amount<Length> BehindFrontAxle, Amount<Length> Left, Amount<Length> Up);
