using System.Globalization;
using System.Net.Sockets;
using Plenum.Web.Host;

namespace Plenum.Cli;

/// <summary>Serves projects to a browser on this machine until it is stopped.</summary>
internal static class Serving
{
    /// <param name="more">What is said below the address.</param>
    /// <returns>An <see cref="ExitCode"/>.</returns>
    public static async Task<int> Run(
        CliContext context,
        WebSettings settings,
        string more,
        CancellationToken ct
    )
    {
        if (!PlenumWeb.IsLoopback(settings.Address))
        {
            await context.Error.WriteLineAsync(
                $"{settings.Address} is not served: until people can sign in, only this machine's own address 127.0.0.1 is. "
                    + "Leave --address out."
            );
            return ExitCode.NotAllowed;
        }

        await using var app = PlenumWeb.Build(settings, context.Clock);
        try
        {
            await app.StartAsync(ct);
        }
        catch (OperationCanceledException) when (ct.IsCancellationRequested)
        {
            return ExitCode.Done;
        }
        catch (Exception refused) when (refused is IOException or SocketException)
        {
            return await Refuse(context, settings, refused);
        }

        foreach (var address in PlenumWeb.Addresses(app))
        {
            await context.Out.WriteLineAsync($"Plenum is at {address}/");
        }

        await context.Out.WriteLineAsync(
            "Open this address in a browser on this machine. Ctrl+C stops it."
        );
        await context.Out.WriteAsync(more);
        await context.Out.FlushAsync(CancellationToken.None);
        await app.WaitForShutdownAsync(ct);
        return ExitCode.Done;
    }

    private static async Task<int> Refuse(
        CliContext context,
        WebSettings settings,
        Exception refused
    )
    {
        var port = settings.Port.ToString(CultureInfo.InvariantCulture);
        var socket = refused as SocketException ?? refused.GetBaseException() as SocketException;
        switch (socket?.SocketErrorCode)
        {
            case SocketError.AddressAlreadyInUse:
                await context.Error.WriteLineAsync(
                    $"Port {port} is in use by another program. Name another with --port, or leave it out for a free one."
                );
                return ExitCode.BadInput;
            case SocketError.AccessDenied:
                await context.Error.WriteLineAsync(
                    $"Port {port} may not be used by you. Name one from 1024 on with --port, or leave it out for a free one."
                );
                return ExitCode.NotAllowed;
            default:
                await context.Error.WriteLineAsync(
                    $"{settings.Address}, port {port}, cannot be served: {refused.Message}"
                );
                return ExitCode.BadInput;
        }
    }
}
