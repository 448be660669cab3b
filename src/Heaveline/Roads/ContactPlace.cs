namespace Heaveline.Roads;

/// <summary>How far a <see cref="ContactAverage"/> has come: its state between two of its knots.</summary>
/// <param name="Front">Piece of the profile under the front end of the contact; −1 before the first.</param>
/// <param name="Rear">Piece under its rear end.</param>
/// <param name="X">Distance of its middle, m.</param>
internal readonly record struct ContactPlace(int Front, int Rear, double X);
