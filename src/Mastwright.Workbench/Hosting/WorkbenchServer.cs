using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography.X509Certificates;
using System.Threading.RateLimiting;
using Mastwright.Workbench.Access;
using Mastwright.Workbench.Api;
using Mastwright.Workbench.Components;
using Mastwright.Workbench.Desk;
using Mastwright.Workbench.Drag;
using Mastwright.Workbench.Keeping;
using Mastwright.Workbench.Work;
using Mastwright.Workbench.Work.Evidence;
using Mastwright.Workbench.Work.Network;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using MudBlazor.Services;

namespace Mastwright.Workbench.Hosting;

/// <summary>Serves the pages of a plan until it is told to stop.</summary>
public static class WorkbenchServer
{
    /// <summary>The program whose published files hold the pages' assets.</summary>
    private const string ProgramName = "Mastwright.Cli";
    private const int KeyTriesAMinute = 10;

    /// <summary>Starts the server, tells where it is, and waits for the end.</summary>
    /// <param name="options">What to serve, and to whom.</param>
    /// <param name="output">Told where the pages are, and a new access key.</param>
    /// <param name="error">Told what is wrong.</param>
    /// <param name="cancellation">Ends the server.</param>
    /// <returns>Whether it was served; false, after telling what is wrong, when it could not be.</returns>
    public static async Task<bool> RunAsync(WorkbenchOptions options, TextWriter output, TextWriter error, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(error);
        if (options is { IsLoopback: false, WithoutTls: true, InsistOnKeyInClear: false })
        {
            await error.WriteLineAsync("--no-tls: the access key would travel in clear, to be read by anyone on the way. Leave --no-tls out, or add --insist-on-key-in-clear where something else encrypts the way.").ConfigureAwait(false);
            return false;
        }

        try
        {
            string folder = KeptFolder.Of(options);
            AccessKey? key = options.IsLoopback ? null : await Key(options, folder, output).ConfigureAwait(false);
            X509Certificate2? certificate = null;
            if (options.UsesTls && (certificate = MadeCertificate.Find(options, folder, TimeProvider.System.GetUtcNow(), out string problem)) is null)
            {
                await error.WriteLineAsync(problem).ConfigureAwait(false);
                return false;
            }

            await using WebApplication app = Build(options, folder, key, certificate);
            await app.StartAsync(cancellation).ConfigureAwait(false);
            string address = Address(app, options);
            await output.WriteLineAsync($"{options.PlanPath} is open at {address}").ConfigureAwait(false);
            foreach (string line in app.Services.GetRequiredService<PlanDesk>().Current.Problems)
            {
                await error.WriteLineAsync(line).ConfigureAwait(false);
            }

            await output.WriteLineAsync("Ctrl+C ends it.").ConfigureAwait(false);
            await output.FlushAsync(CancellationToken.None).ConfigureAwait(false);
            await app.WaitForShutdownAsync(cancellation).ConfigureAwait(false);
            return true;
        }
        catch (IOException fault) when (fault.InnerException is AddressInUseException or SocketException)
        {
            await error.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"--port {options.Port}: {options.Address} cannot be listened on there: {fault.InnerException.Message}. Another port, or --port 0 for any free one, will do.")).ConfigureAwait(false);
        }
        catch (SocketException fault)
        {
            await error.WriteLineAsync($"--listen {options.Address}: cannot be listened on: {fault.Message}").ConfigureAwait(false);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            await error.WriteLineAsync($"serve: {fault.Message}").ConfigureAwait(false);
        }

        return false;
    }

    private static async Task<AccessKey> Key(WorkbenchOptions options, string folder, TextWriter output)
    {
        if (!options.NewKey && AccessKey.Read(folder) is { } kept)
        {
            return kept;
        }

        AccessKey made = AccessKey.Make(folder, out string shown);
        await output.WriteLineAsync($"Access key, shown this once: {shown}").ConfigureAwait(false);
        return made;
    }

    private static WebApplication Build(WorkbenchOptions options, string folder, AccessKey? key, X509Certificate2? certificate)
    {
        WebApplicationBuilder builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            Args = [],
            ApplicationName = ProgramName,
            EnvironmentName = Environments.Production,
            ContentRootPath = AppContext.BaseDirectory,
            WebRootPath = Path.Combine(AppContext.BaseDirectory, "wwwroot"),
        });
        builder.Configuration.Sources.Clear();
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.ConfigureKestrel(kestrel => Listen(kestrel, options, certificate));
        builder.Logging.ClearProviders();
        builder.Logging.AddSimpleConsole(console => console.SingleLine = true);
        builder.Logging.SetMinimumLevel(LogLevel.Warning);
        // That keys lie in a file that the user alone can read is as it is meant to be.
        builder.Logging.AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error);
        builder.Services.Configure<Microsoft.Extensions.Logging.Console.ConsoleLoggerOptions>(console => console.LogToStandardErrorThreshold = LogLevel.Trace);
        Services(builder.Services, options, folder, key);
        WebApplication app = builder.Build();
        Pipeline(app, options, key);
        return app;
    }

    private static void Listen(KestrelServerOptions kestrel, WorkbenchOptions options, X509Certificate2? certificate)
    {
        kestrel.AddServerHeader = false;
        // The largest thing that anybody sends is a plan.
        kestrel.Limits.MaxRequestBodySize = 2 << 20;
        kestrel.Limits.MaxRequestHeadersTotalSize = 16 << 10;
        kestrel.Limits.MaxConcurrentConnections = 256;
        kestrel.Limits.MaxConcurrentUpgradedConnections = 64;
        kestrel.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(15);
        kestrel.Listen(options.Address, options.Port, endpoint =>
        {
            if (certificate is not null)
            {
                endpoint.UseHttps(certificate);
            }
        });
    }

    private static void Services(IServiceCollection services, WorkbenchOptions options, string folder, AccessKey? key)
    {
        services.AddSingleton(options);
        services.AddSingleton(TimeProvider.System);
        services.AddSingleton<PlanDesk>();
        services.AddSingleton<DragDesk>();
        services.AddHostedService(provider => provider.GetRequiredService<DragDesk>());
        services.AddSingleton<PlanKeeper>();
        services.AddSingleton<IWork, LinksWork>();
        services.AddSingleton<IWork, HopsWork>();
        services.AddSingleton<IWork, ShadowWork>();
        services.AddSingleton<IWork, AirWork>();
        services.AddSingleton<IWork, RelayWork>();
        services.AddSingleton<IWork, ReachWork>();
        services.AddSingleton<IWork, ProveWork>();
        services.AddSingleton<RecordsDesk>();
        services.AddSingleton<SiteLog>();
        services.AddSingleton<IWork, FitWork>();
        services.AddSingleton<IWork, ImportWork>();
        services.AddSingleton<FileShelf>();
        services.AddSingleton<WorkShelf>();
        services.AddSingleton<WorkDesk>();
        services.AddHostedService(provider => provider.GetRequiredService<WorkDesk>());
        services.AddMudServices();
        services.AddRazorComponents().AddInteractiveServerComponents(circuit =>
        {
            circuit.DetailedErrors = false;
            circuit.DisconnectedCircuitMaxRetained = 16;
        }).AddHubOptions(hub => hub.MaximumReceiveMessageSize = 64 << 10);
        services.AddDataProtection().SetApplicationName("mastwright").PersistKeysToFileSystem(new(Path.Combine(folder, "cookie-keys")));
        services.AddAntiforgery(antiforgery => Own(antiforgery.Cookie, "mastwright-form", options));
        services.AddProblemDetails(problems => problems.CustomizeProblemDetails = context => context.ProblemDetails.Extensions.Remove("traceId"));
        services.AddOpenApi("v1", ApiDescription.Describe);
        services.AddRateLimiter(limiter =>
        {
            limiter.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
            limiter.AddFixedWindowLimiter(Gate.Limiter, window => (window.PermitLimit, window.Window, window.QueueLimit) = (KeyTriesAMinute, TimeSpan.FromMinutes(1), 0));
        });
        if (key is null)
        {
            return;
        }

        services.AddAuthentication(CookieAuthenticationDefaults.AuthenticationScheme).AddCookie(cookie =>
        {
            Own(cookie.Cookie, "mastwright-key", options);
            cookie.LoginPath = Gate.Path;
            cookie.ReturnUrlParameter = "to";
            cookie.ExpireTimeSpan = TimeSpan.FromDays(30);
            cookie.Events.OnRedirectToLogin = context =>
            {
                // A page is led to the key's page; a program is told.
                if (context.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal) || !HttpMethods.IsGet(context.Request.Method))
                {
                    context.Response.StatusCode = StatusCodes.Status401Unauthorized;
                }
                else
                {
                    context.Response.Redirect($"{Gate.Path}?to={Uri.EscapeDataString(context.Request.PathBase + context.Request.Path + context.Request.QueryString)}");
                }

                return Task.CompletedTask;
            };
        });
        services.AddAuthorizationBuilder().SetFallbackPolicy(new AuthorizationPolicyBuilder().RequireAssertion(context => Gate.Holds(context.User, key)).Build());
        services.AddCascadingAuthenticationState();
    }

    private static void Own(CookieBuilder cookie, string name, WorkbenchOptions options)
    {
        cookie.Name = name;
        cookie.HttpOnly = true;
        cookie.SameSite = SameSiteMode.Strict;
        cookie.SecurePolicy = options.UsesTls ? CookieSecurePolicy.Always : CookieSecurePolicy.SameAsRequest;
    }

    private static void Pipeline(WebApplication app, WorkbenchOptions options, AccessKey? key)
    {
        app.UseMiddleware<PageHeaders>(options);
        app.UseExceptionHandler(new ExceptionHandlerOptions { ExceptionHandler = Broken, SuppressDiagnosticsCallback = _ => false });
        app.UseStatusCodePages(StatusPages.Answer);
        app.UseMiddleware<Door>(options);
        app.UseRouting();
        app.UseRateLimiter();
        if (key is not null)
        {
            app.UseAuthentication();
            app.UseAuthorization();
        }

        app.UseAntiforgery();
        app.MapStaticAssets(Path.Combine(AppContext.BaseDirectory, ProgramName + ".staticwebassets.endpoints.json")).AllowAnonymous();
        app.MapGet("/fonts/{name}.ttf", PageFonts.Answer).AllowAnonymous().ExcludeFromDescription();
        ApiEndpoints.Map(app);
        app.MapOpenApi("/api/{documentName}/openapi.json");
        app.MapGet("/api/v1/schemas/{name}.json", (string name) => ApiDescription.Schema(name) is { } schema ? Results.Stream(schema, "application/schema+json") : Results.NotFound()).ExcludeFromDescription();
        if (key is not null)
        {
            Gate.Map(app, key);
        }

        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(mode => mode.ContentSecurityFrameAncestorsPolicy = null);
    }

    /// <summary>What a reader gets when the program is at fault: a sentence. The fault itself goes to the log.</summary>
    private static Task Broken(HttpContext context)
    {
        bool isQuestion = context.Features.Get<IExceptionHandlerFeature>()?.Error is Microsoft.AspNetCore.Http.BadHttpRequestException;
        context.Response.StatusCode = isQuestion ? StatusCodes.Status400BadRequest : StatusCodes.Status500InternalServerError;
        return Results.Problem(
            isQuestion ? "The request cannot be understood." : "This is a fault of the program, not of your input. Its log says more.",
            statusCode: context.Response.StatusCode).ExecuteAsync(context);
    }

    private static string Address(WebApplication app, WorkbenchOptions options)
    {
        string listened = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();
        Uri uri = new(listened);
        string host = options.Address.Equals(IPAddress.Loopback) ? "localhost"
            : options.HostNames is [var name, ..] ? name
            : options.Address.Equals(IPAddress.Any) || options.Address.Equals(IPAddress.IPv6Any) ? Dns.GetHostName()
            : uri.Host;
        return string.Create(CultureInfo.InvariantCulture, $"{uri.Scheme}://{host}:{uri.Port}/");
    }
}
