namespace Heaveline.References;

/// <summary>Customary units of American textbooks, exact by definition (international yard and pound, standard gravity).</summary>
internal static class Customary
{
    public const double Foot = 0.3048;
    public const double Inch = 0.0254;
    public const double PoundForce = 0.45359237 * 9.80665;
    public const double PoundForcePerInch = PoundForce / Inch;
    public const double PoundForcePerFoot = PoundForce / Foot;

    /// <summary>One lbf·s²/ft.</summary>
    public const double Slug = PoundForce / Foot;

    /// <summary>Mass of a weight when a book rounds g to so many in/s².</summary>
    public static double MassOf(double pounds, double gravityInInches) => pounds * PoundForce / (gravityInInches * Inch);
}
