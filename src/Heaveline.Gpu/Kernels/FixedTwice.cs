namespace Heaveline.Gpu.Kernels;

/// <summary>Twice another number.</summary>
internal struct FixedTwice<THalf> : IFixed
    where THalf : IFixed
{
    public static int Value => 2 * THalf.Value;
}
