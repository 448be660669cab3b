using Heaveline.Numerics;
using Heaveline.Passes.Steps;
using ILGPU;

namespace Heaveline.Gpu.Kernels;

/// <summary>One thread, one run: the step of the lanes, and what is asked of its curves gathered while it runs.</summary>
internal static class DeviceKernel
{
    /// <summary>Steps that are written out one after the other, so that past accelerations need not be moved.</summary>
    public const int WrittenOut = 4;

    /// <summary>For four steps a sample, or eight, and so on.</summary>
    public static void Four<T, TSides, TDampers, TAbove, TBelow, TFurther, TSignals>(DeviceArguments<T> a)
        where T : unmanaged, ILane<T>
        where TSides : unmanaged, ISides<TSides, T>
        where TDampers : unmanaged, IKinkChain<TDampers, T>
        where TAbove : unmanaged, IKinkChain<TAbove, T>
        where TBelow : unmanaged, IKinkChain<TBelow, T>
        where TFurther : unmanaged, IDeviceFurther<TFurther, T>
        where TSignals : unmanaged, IDeviceSignals<TSignals, T>
    {
        var run = Grid.GlobalIndex.X;
        if (run >= a.Runs)
        {
            return;
        }

        var numbers = new NumberReader<T>(a.Numbers, run, a.Runs);
        var car = DeviceCar<T, TSides, TDampers, TAbove, TBelow, TFurther>.Read(ref numbers, in a);
        var table = a.TableOf[run];
        var at = a.Tables[3 * table];
        var samples = a.Tables[(3 * table) + 1];
        var fold = DeviceFold<T, TSignals>.Of(in a, run, table, samples);
        for (var k = 0; k < samples; k++)
        {
            for (var n = 0; n < a.PerSample; n += WrittenOut)
            {
                if (n == 0)
                {
                    fold.Before(k, car.Front, car.Rear, car.Body);
                }

                car.Step(in a, at);
                if (n == 0)
                {
                    fold.After(in a, k, car.Front, car.Rear, car.FrontNow, car.RearNow, car.BodyNow);
                }

                car.Pass();
                Step(ref car, in a, at + 1);
                Step(ref car, in a, at + 2);
                Step(ref car, in a, at + 3);
                at += WrittenOut;
            }
        }

        fold.End(in a, car.Front, car.Rear, in car.Body);
    }

    /// <summary>For any other number of steps.</summary>
    public static void One<T, TSides, TDampers, TAbove, TBelow, TFurther, TSignals>(DeviceArguments<T> a)
        where T : unmanaged, ILane<T>
        where TSides : unmanaged, ISides<TSides, T>
        where TDampers : unmanaged, IKinkChain<TDampers, T>
        where TAbove : unmanaged, IKinkChain<TAbove, T>
        where TBelow : unmanaged, IKinkChain<TBelow, T>
        where TFurther : unmanaged, IDeviceFurther<TFurther, T>
        where TSignals : unmanaged, IDeviceSignals<TSignals, T>
    {
        var run = Grid.GlobalIndex.X;
        if (run >= a.Runs)
        {
            return;
        }

        var numbers = new NumberReader<T>(a.Numbers, run, a.Runs);
        var car = DeviceCar<T, TSides, TDampers, TAbove, TBelow, TFurther>.Read(ref numbers, in a);
        var table = a.TableOf[run];
        var at = a.Tables[3 * table];
        var samples = a.Tables[(3 * table) + 1];
        var fold = DeviceFold<T, TSignals>.Of(in a, run, table, samples);
        for (var k = 0; k < samples; k++)
        {
            fold.Before(k, car.Front, car.Rear, car.Body);
            for (var n = 0; n < a.PerSample; n++)
            {
                car.Step(in a, at);
                if (n == 0)
                {
                    fold.After(in a, k, car.Front, car.Rear, car.FrontNow, car.RearNow, car.BodyNow);
                }

                car.Pass();
                at++;
            }
        }

        fold.End(in a, car.Front, car.Rear, in car.Body);
    }

    private static void Step<T, TSides, TDampers, TAbove, TBelow, TFurther>(
        ref DeviceCar<T, TSides, TDampers, TAbove, TBelow, TFurther> car, in DeviceArguments<T> a, int at)
        where T : unmanaged, ILane<T>
        where TSides : unmanaged, ISides<TSides, T>
        where TDampers : unmanaged, IKinkChain<TDampers, T>
        where TAbove : unmanaged, IKinkChain<TAbove, T>
        where TBelow : unmanaged, IKinkChain<TBelow, T>
        where TFurther : unmanaged, IDeviceFurther<TFurther, T>
    {
        car.Step(in a, at);
        car.Pass();
    }

    /// <summary>What the device can do at most: eight chains of multiply-adds that do not wait for each other, sixteen a turn.</summary>
    public static void Peak<T>(ArrayView<T> x, int count, int turns)
        where T : unmanaged, ILane<T>
    {
        var i = Grid.GlobalIndex.X;
        if (i >= count)
        {
            return;
        }

        var (b, c) = (x[i], x[i + (long)count]);
        var (a0, a1, a2, a3) = (T.Of(0.0), T.Of(1.0), T.Of(2.0), T.Of(3.0));
        var (a4, a5, a6, a7) = (T.Of(4.0), T.Of(5.0), T.Of(6.0), T.Of(7.0));
        for (var k = 0; k < turns; k++)
        {
            a0 = T.Fma(T.Fma(a0, b, c), b, c);
            a1 = T.Fma(T.Fma(a1, b, c), b, c);
            a2 = T.Fma(T.Fma(a2, b, c), b, c);
            a3 = T.Fma(T.Fma(a3, b, c), b, c);
            a4 = T.Fma(T.Fma(a4, b, c), b, c);
            a5 = T.Fma(T.Fma(a5, b, c), b, c);
            a6 = T.Fma(T.Fma(a6, b, c), b, c);
            a7 = T.Fma(T.Fma(a7, b, c), b, c);
        }

        x[i] = a0 + a1 + (a2 + a3) + (a4 + a5 + (a6 + a7));
    }
}
