namespace Heaveline.Gpu.Kernels;

/// <summary>0.</summary>
internal struct FixedZero : IFixed
{
    public static int Value => 0;
}
