namespace Heaveline.Cars;

/// <summary>What a coil spring's law says of its compression, counted from where it is free.</summary>
internal static class CoilForce
{
    /// <summary>Compression under a force, m; null where the law does not know where the spring is free.</summary>
    /// <param name="law">The law.</param>
    /// <param name="force">N.</param>
    public static double? Under(SpringLaw law, double force) => law switch
    {
        LinearSpring spring => force / spring.Rate.Si,
        TableSpring { Table: var table } when BeginsFree(table) => table.AtForce(force) - table.At[0],
        _ => null,
    };

    /// <summary>Force at a compression, N: below 0 where the spring is longer than free, as if it were held at its ends.</summary>
    /// <param name="law">A law that knows where the spring is free.</param>
    /// <param name="compression">m.</param>
    public static double At(SpringLaw law, double compression) => law switch
    {
        LinearSpring spring => spring.Rate.Si * compression,
        TableSpring { Table: var table } when BeginsFree(table) => table.ForceAt(table.At[0] + compression),
        _ => throw new ArgumentException($"A {law.GetType().Name} does not know where it is free.", nameof(law)),
    };

    /// <summary>Travel that takes a spring from one force to another, m; not finite where its table never does.</summary>
    public static double Between(SpringLaw law, double from, double to) => law switch
    {
        LinearSpring spring => (to - from) / spring.Rate.Si,
        TableSpring { Table: var table } => table.AtForce(to) - table.AtForce(from),
        _ => (to - from) / law.RateAtReference(from),
    };

    /// <summary>Whether a table begins where the spring is free: a force of 0, and a rising one from there.</summary>
    public static bool BeginsFree(ForceTable table) => table.Force[0] == 0.0 && table.Force[1] > 0.0;
}
