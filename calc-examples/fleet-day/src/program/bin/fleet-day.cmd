@echo off
rem Starts fleet-day from any folder, with the Java of JAVA_HOME or else of the path.
setlocal
set "JAVA=java"
if defined JAVA_HOME set "JAVA=%JAVA_HOME%\bin\java"
"%JAVA%" -XX:TieredStopAtLevel=1 -cp "%~dp0..\lib\*" org.gritwright.examples.fleetday.FleetDayCommand %*
exit /b %ERRORLEVEL%
