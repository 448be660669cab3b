namespace Heaveline.Files.Forms;

/// <summary>A unit to choose from.</summary>
/// <param name="Symbol">The symbol as written; empty for a plain number.</param>
/// <param name="Factor">One of it in SI units; above 0.</param>
public sealed record FormUnit(string Symbol, double Factor);
